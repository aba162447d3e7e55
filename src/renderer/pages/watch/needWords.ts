import type { FeedingHold } from '../../../domain/care/feedingHold.ts';
import { MOLT_PACES, type MoltTimer } from '../../../domain/care/moltTimer.ts';
import { STRONGLY_FROM, SUSPECTED_FROM, type Suspicion } from '../../../domain/care/suspicion.ts';
import type { Need, Reason, WatchItem } from '../../../domain/care/watchItem.ts';
import type { Instant } from '../../../domain/dates.ts';
import type { ExpectedMolt } from '../../../domain/growth/forecast/expectedMolt.ts';
import { RECOVER_CAUTION } from '../../../words/cautions.ts';
import { counted, listed } from '../../../words/counts.ts';
import { dayInWords, daysInWords, durationInWords, momentInWords, spanInWords } from '../../../words/dates.ts';
import { capitalized, uncapitalized } from '../../../words/labels.ts';
import { fangColorInWords, SEEN_LABELS } from '../../../words/observations.ts';
import { fangsUnseenInWords, spanInWordsOf, waitInWords } from './holdWords.ts';

export interface NeedWords {
  readonly title: string;
  /** One line: why this animal stands here. */
  readonly why: string;
}

/** What a reader's clock is off UTC by at an instant; said of moments that were noted on another one. */
type OffsetAt = (instant: Instant) => string;

export function needInWords(need: Need, offsetAt?: OffsetAt): NeedWords {
  switch (need.kind) {
    case 'molting':
      return { title: MOLT_TITLES[need.timer.state], why: moltWhy(need.timer, offsetAt) };
    case 'molt-end-unseen':
      return {
        title: 'A molt without an end',
        why: `Molting since ${dayInWords(need.startedOn)}, it ate on ${dayInWords(need.ateOn)}: the molt is over, and nobody noted when. Its days are enough.`,
      };
    case 'died-in-molt':
      return {
        title: 'Died in its molt',
        why: `So the molt of ${dayInWords(need.diedOn)} says, and the animal still counts as kept. Nothing is foretold or held any more.`,
      };
    case 'hardening':
      return { title: 'Hardening after its molt', why: holdWhy(need.hold) };
    case 'feeding-hold':
      return { title: 'No prey yet', why: holdWhy(need.hold) };
    case 'fangs-unseen':
      return { title: 'Fangs never looked at', why: fangsUnseenInWords(need.moltedOn) };
    case 'molt-to-record':
      return { title: 'A molt to put on record', why: `Seen free of its skin on ${dayInWords(need.moltedOn)}.` };
    case 'skin-to-recover':
      return {
        title: 'A skin to recover',
        why: `Molted on ${dayInWords(need.moltedOn)}; nothing is on record about the skin. ${RECOVER_CAUTION}`,
      };
    case 'skin-to-read':
      return {
        title: `A skin to ${listed(need.missing.map((one) => READING_VERBS[one]))}`,
        why: `Of the molt on ${dayInWords(need.moltedOn)}; still missing: ${listed(need.missing.map((one) => READING_STEPS[one]))}.${need.others > 0 ? ` After it, ${counted(need.others, 'earlier skin')}.` : ''}${nothingToMeasure(need.missing)}`,
      };
    case 'premolt':
      return {
        title: need.suspicion.level === 'suspected' ? 'Premolt suspected' : 'Premolt strongly suspected',
        why: premoltWhy(need.suspicion),
      };
    case 'molt-overdue':
      return {
        title: 'Waiting long for a molt',
        why: `${overdueInWords(need.forecast)}; its page says what that rests on.`,
      };
    case 'molt-due':
      return {
        title: 'Molt expected',
        why: `Likely ${spanInWords(need.forecast.from, need.forecast.to)}, by the forecast; its page says what that rests on.`,
      };
  }
}

/** The one line of an entry: why, and after it what else brings the animal here. */
export function whyInWords({ need, also }: Pick<WatchItem, 'need' | 'also'>, offsetAt?: OffsetAt): string {
  const { why } = needInWords(need, offsetAt);
  return also.length === 0 ? why : `${why} Also: ${also.map((other) => alsoInWords(other.need)).join('; ')}.`;
}

/** A need that stands behind a more urgent one of the same animal. */
export function alsoInWords(need: Need): string {
  const name = uncapitalized(needInWords(need).title);
  switch (need.kind) {
    case 'molt-overdue':
    case 'molt-due':
      return need.forecast.told ? `${name}, likely ${spanInWords(need.forecast.from, need.forecast.to)}` : name;
    case 'molt-to-record':
      return `${name}, of ${dayInWords(need.moltedOn)}`;
    case 'skin-to-recover':
      return `${name}, shed on ${dayInWords(need.moltedOn)}`;
    case 'skin-to-read':
      return `${name}, shed on ${dayInWords(need.moltedOn)}${need.others > 0 ? ` and ${counted(need.others, 'earlier one')}` : ''}`;
    case 'molt-end-unseen':
      return `${name}, begun on ${dayInWords(need.startedOn)}`;
    case 'molting':
    case 'died-in-molt':
    case 'hardening':
    case 'feeding-hold':
    case 'fangs-unseen':
    case 'premolt':
      return name;
  }
}

/** One next step: its words, and the room it is taken in where that is another one. */
export function stepOf({ need, action }: Reason, specimenId: string): { readonly words: string; readonly to: string | null } {
  switch (action) {
    case 'look-in':
      return { words: 'Look in, note the stage', to: null };
    case 'ask-a-veterinarian':
      return { words: 'Read what to do now', to: null };
    case 'set-the-clock':
      return { words: 'Check the clock of this machine', to: null };
    case 'note-fangs':
      return { words: 'Look at the fangs, note their color', to: null };
    case 'wait':
      return { words: need.kind === 'feeding-hold' ? `Wait until ${dayInWords(need.hold.until)}` : 'Wait', to: null };
    case 'record-death':
      return { words: 'Record it as dead', to: null };
    case 'record-molt':
      return { words: 'Put it on record', to: null };
    case 'record-skin':
      return { words: 'Record its skin', to: null };
    case 'read-skin':
      return readingStep(need, specimenId);
    case 'stop-offering-prey':
      return { words: 'Leave it alone; no prey, full water dish', to: null };
    case 'watch-for-signs':
      return { words: 'Look for signs', to: null };
  }
}

function overdueInWords({ told, from, to }: ExpectedMolt): string {
  return told
    ? `Only one in twenty such intervals lasts this long. If it still comes, likely ${spanInWords(from, to)}`
    : 'Hardly any interval lasts this long, so no day can be told: a molt that went unseen or a male who has grown up is likelier';
}

const MOLT_TITLES: Readonly<Record<MoltTimer['state'], string>> = {
  usual: 'Molting now',
  'look-closer': 'Molting for longer than usual',
  concern: 'Molting for too long',
  'clock-set-back': 'Molting; the clock does not fit',
};

const READING_VERBS = { photo: 'photograph', measuring: 'measure', sexing: 'examine' } as const;

/** How a skin leaves the board that has been examined, or has no strip, and gives no size either. */
function nothingToMeasure(missing: readonly (keyof typeof READING_VERBS)[]): string {
  return missing.includes('sexing') ? '' : ' If nothing of it can be measured, record on its page that only fragments are left.';
}

const READING_STEPS = { photo: 'a photo', measuring: 'its sizes', sexing: 'an examination' } as const;

function readingStep(need: Need, specimenId: string): { words: string; to: string } {
  if (need.kind !== 'skin-to-read' || need.missing.includes('photo')) return { words: 'Bring photos in', to: `/intake/${specimenId}` };
  return need.missing.includes('measuring')
    ? { words: 'Measure it on the Bench', to: `/bench/${need.photoId ?? ''}` }
    : { words: 'Examine it', to: `/examination/${need.exuviaId}` };
}

function moltWhy({ elapsedMinutes, startSeen, startedAt, size, sizeKnown, lastStage }: MoltTimer, offsetAt?: OffsetAt): string {
  const began = `${capitalized(startSeen ? SEEN_LABELS['turned-over'] : 'found molting')} ${momentInWords(startedAt, offsetAt?.(startedAt.at))}`;
  if (elapsedMinutes === null) return `${began}: later than the clock of this machine says it is now.`;
  const passed = `${startSeen ? '' : 'at least '}${durationInWords(elapsedMinutes)} ago`;
  const stage = lastStage === 'turned-over' ? '' : ` Last seen: ${SEEN_LABELS[lastStage]}.`;
  const usual = sizeKnown ? `Usual for ${SIZE_NAMES[size]}: ${paceInWords(size)}.` : shortestLimitsInWords();
  return `${began}, ${passed}. ${usual}${stage}`;
}

/** What the clock goes by where no size is known. */
export function shortestLimitsInWords(): string {
  const { lookCloserAfterMinutes, concernAfterMinutes } = MOLT_PACES.smallest;
  return `Its size is not known, so the shortest limits count: look closer after ${durationInWords(lookCloserAfterMinutes)}, concern after ${durationInWords(concernAfterMinutes)}.`;
}

const SIZE_NAMES = { smallest: 'the smallest spiderlings', juvenile: 'juveniles', large: 'large animals' } as const;

export function paceInWords(size: MoltTimer['size']): string {
  const { from, to } = MOLT_PACES[size].usualMinutes;
  if (from === to) return 'about half an hour';
  return size === 'large' ? 'several hours, up to a day' : `${durationInWords(from)} to ${durationInWords(to)}`;
}

function holdWhy(hold: FeedingHold): string {
  const fangs = hold.fangs ? `fangs ${fangColorInWords(hold.fangs.color)}` : 'fangs not noted yet';
  const wait = `its wait of ${waitInWords(hold.wait)} ${hold.missing.includes('date') ? 'ends' : 'ended'} on ${dayInWords(hold.until)}`;
  return `Molted on ${dayInWords(hold.moltedOn)}; ${wait}; ${fangs}.${ateTooEarly(hold)} ${spanInWordsOf(hold)}`;
}

function ateTooEarly({ ateOn, fangs, missing }: FeedingHold): string {
  if (ateOn === null) return '';
  const early = missing.includes('date') || fangs === null ? 'too early' : `with fangs last noted ${fangColorInWords(fangs.color)}`;
  return ` Noted as having eaten on ${dayInWords(ateOn)}, ${early}: offer nothing more until the hold is over.`;
}

function premoltWhy({ items, points, daysSinceMeal }: Suspicion): string {
  const seen = items.filter((item) => item.points > 0).map(itemInWords);
  const against = items.filter((item) => item.points < 0).map(itemInWords);
  const but = against.length === 0 ? '' : ` Against it: ${listed(against)}.`;
  const meal = daysSinceMeal === null ? 'No meal noted' : `Last meal ${daysInWords(daysSinceMeal)} ago`;
  return `${capitalized(listed(seen))} (${counted(points, 'point')}; suspected from ${SUSPECTED_FROM}, strongly from ${STRONGLY_FROM}).${but} ${meal}.`;
}

const FORECAST_STAGES = {
  window: 'one in four would have molted by now, by the forecast',
  'past-likely': 'one in two would have molted by now, by the forecast',
  overdue: 'nearly all would have molted by now, by the forecast',
} as const;

export function itemInWords(item: Suspicion['items'][number]): string {
  switch (item.kind) {
    case 'sign':
      return SEEN_LABELS[item.sign];
    case 'refused':
      return item.times === 1 ? 'refused food' : `refused food ${item.times} times`;
    case 'ate-after-signs':
      return `ate on ${dayInWords(item.on)}, after signs were noted`;
    case 'forecast':
      return FORECAST_STAGES[item.stage];
  }
}
