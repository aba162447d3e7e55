import type { MoltWatched } from '../domain/care/lastMolt.ts';
import type { MaleMaturitySign } from '../domain/care/matureMale.ts';
import type { SizeForecast } from '../domain/growth/belief/foretoldSize.ts';
import type { ForecastFact } from '../domain/growth/belief/growthRecord.ts';
import type { Shares } from '../domain/growth/belief/shares.ts';
import type { Coverage } from '../domain/growth/forecast/coverage.ts';
import type { DueForecast } from '../domain/growth/forecast/dueForecast.ts';
import { isDayTold } from '../domain/growth/forecast/expectedMolt.ts';
import type { GrowthForecast } from '../domain/growth/forecast/forecast.ts';
import type { Instar } from '../domain/molting/instar.ts';
import { counted, listed } from './counts.ts';
import { dayInWords, spanInWords } from './dates.ts';
import { instarInWords } from './instars.ts';
import { capitalized } from './labels.ts';

/** A forecast as sentences: what is foretold, how closely, from what, and what would help. */
export interface ForecastWords {
  readonly headline: string;
  readonly closer: string | null;
  /** Keeps the animal after the molt apart from the skin that the molt leaves. */
  readonly skin: string | null;
  readonly why: string;
  readonly missing: readonly string[];
}

/** @param now the instar the animal lives in; null where it is not known. */
export function forecastInWords({ due, size, facts }: GrowthForecast, now: Instar | null): ForecastWords {
  const then = size && `carapace then ${millimeters(size.afterMolt.low90Mm, size.afterMolt.high90Mm)}`;
  return {
    headline: headlineOf(due, facts, then),
    closer:
      due && isDayTold(due)
        ? `Nine chances in ten. It may come as well before as after ${dayInWords(due.middle)}; with even chances ${windowInWords(due.window50)}${size ? `, and ${millimeters(size.afterMolt.low50Mm, size.afterMolt.high50Mm)}` : ''}.`
        : null,
    skin: size && skinInWords(size.nextSkin, now),
    why: whyInWords(due, size),
    missing: facts.map((fact) => FACTS[fact]),
  };
}

function headlineOf(due: DueForecast | null, facts: readonly ForecastFact[], then: string | null): string {
  if (!due) return `No day can be foretold${then ? `; at the next molt, ${then}` : ''}.`;
  if (!isDayTold(due)) return `It has waited for its next molt too long to foretell a day${then ? `; ${then}, if it comes` : ''}.`;
  const likely = facts.includes('overdue') ? 'overdue; if it still comes, likely' : 'likely';
  return `Next molt: ${likely} ${windowInWords(due.window90)}${then ? `; ${then}` : ''}.`;
}

const GROWN_BY: Readonly<Record<MaleMaturitySign, string>> = {
  'palpal-bulbs': 'he was seen with palpal bulbs',
  'sperm-web': 'a sperm web of his is on record',
  'noted-mature': 'he is noted as mature',
};

/** Why nothing is foretold of a mature male. */
export function matureMaleInWords(knownBy: MaleMaturitySign): string {
  return `No next molt is foretold: a mature male seldom molts again, and ${GROWN_BY[knownBy]}.`;
}

/** Why nothing is foretold while a molt that was watched is not on record. */
export function moltWatchedInWords({ state, on }: MoltWatched): string {
  return state === 'under-way'
    ? `It is molting now, since ${dayInWords(on)}.`
    : `It molted ${dayInWords(on)}, and the molt is not on record yet.`;
}

/** A number that holds only if no molt was missed says so where the animal is named, not again here. */
function skinInWords({ low90Mm, high90Mm }: SizeForecast, instar: Instar | null): string {
  const now = instar?.certainty === 'known' ? instar : null;
  const skin = `The skin it leaves then shows ${now ? `${instarInWords(now)}, the one living now` : 'the instar living now'}: ${millimeters(low90Mm, high90Mm)}`;
  return now ? `${skin}; the animal itself is then in instar ${now.number + 1}.` : `${skin}; the animal itself is one instar further.`;
}

/** "12 Feb to 9 May 2026": the widest of what is told in a list. */
export function dueInWords(due: Pick<DueForecast, 'window90' | 'chanceOfLasting'>): string {
  return isDayTold(due) ? windowInWords(due.window90) : 'no day can be told';
}

/** In a list, where no next molt stands because this one is watched. */
export function watchedShortly({ state, on }: MoltWatched): string {
  return state === 'under-way' ? 'molting now' : `molted ${dayInWords(on)}, not yet on record`;
}

function windowInWords({ from, to }: DueForecast['window90']): string {
  return from === to ? dayInWords(from) : spanInWords(from, to);
}

/** "18.2 to 21.0 mm", with a decimal more where the width of the interval lets it stand. */
export function millimeters(low: number, high: number): string {
  const digits = high - low < 0.2 ? 2 : 1;
  return `${low.toFixed(digits)} to ${high.toFixed(digits)} mm`;
}

function whyInWords(due: DueForecast | null, size: GrowthForecast['size']): string {
  const parts = [
    due && `the day from ${ownInWords(due.ownIntervals, 'interval')} of its own (${sharesInWords(due.shares)})`,
    size && `the size from ${ownInWords(size.ownRatios, 'ratio')} of its own (${sharesInWords(size.shares)})`,
  ].filter((part) => part !== null);
  if (parts.length === 0) return 'Nothing on record says when or how much it grows.';
  const trends = [
    due && isTrendOfOthers(due) && 'how intervals lengthen from instar to instar',
    size && isTrendOfOthers(size) && 'how ratios fall',
  ].filter((part) => typeof part === 'string');
  const others =
    trends.length === 0
      ? ''
      : ` ${capitalized(listed(trends))} ${trends.length === 1 ? 'rests' : 'rest'} mostly on others and on what is assumed: only long rows show it.`;
  return `Why: ${listed(parts)}.${others}`;
}

/** Where its own steps tell most of the level and little of the change, the shares of the level alone would mislead. */
function isTrendOfOthers({ shares, ownTrend }: { readonly shares: Shares; readonly ownTrend?: number | undefined }): boolean {
  return ownTrend !== undefined && shares.own >= 0.5 && ownTrend < 0.5;
}

function ownInWords(count: number, what: string): string {
  return count === 0 ? `no ${what}` : counted(count, what);
}

const FROM: Readonly<Record<keyof Shares, string>> = {
  own: 'its own',
  siblings: 'siblings',
  species: 'others of its species',
  genus: 'others of its genus',
  family: 'other tarantulas here',
  prior: 'what is assumed of all tarantulas',
};

/** Shares of the weight that round to nothing are left out. */
function sharesInWords(shares: Shares): string {
  const told = (Object.keys(FROM) as (keyof Shares)[]).filter((from) => Math.round(100 * shares[from]) > 0);
  return told.map((from) => `${FROM[from]} ${Math.round(100 * shares[from])} %`).join(', ');
}

const FACTS: Readonly<Record<ForecastFact, string>> = {
  'no-molts': 'No molt is on record yet.',
  'nothing-to-count-from': 'There is no day to count from: note the last molt, the hatching, or when the animal came.',
  'no-whole-interval': 'No interval between two molts is known yet, so the days rest on others.',
  'no-measured-skin': 'No skin is measured yet, so no size can be told.',
  'one-measured-skin': 'One skin is measured; a second gives a ratio of its own.',
  'instar-assumed': 'No instar is noted, so one is assumed; a number at any molt narrows the window.',
  'instars-contradict': 'Its instar numbers contradict each other and are left out.',
  'steps-not-known': 'On which side of some molts a gap lies is not known; those steps are left out.',
  'date-in-future': 'A molt is dated in the future and left out.',
  'molts-on-one-day': 'Two molts stand on one day; no interval is taken from them.',
  'size-unusable': 'A size that no carapace has is left out: look at the scale of its photo.',
  'start-not-seen': 'The running interval began before the animal came; its beginning was not seen.',
  'last-molt-wide': 'The days on record for the last molt lie far apart, which widens the window; the day it was found narrows it.',
  'no-day-told': 'What is known would allow a window of more than ten years, so no day is told: note the days of its molts more closely.',
  'step-doubted':
    'From one of its skins to the next the size falls, or leaps, as no molts explain. That growth is left out until it is settled; its Ladder asks.',
  'last-skin-doubted': 'The size of its last measured skin is in doubt, so none is foretold from it. Its Ladder asks what is wrong.',
  overdue: 'Only one in twenty such intervals lasts this long. A mature male, or an animal that molted unseen, waits like this.',
};

/** How past forecasts held, or that there is nothing to judge yet. */
export function coverageInWords({ due, size, overrun, open }: Coverage): string[] {
  if (due.scored === 0 && size.scored === 0) {
    return [
      'No forecast can be judged yet. One is kept each time a molt is put on record, and judged when the next one comes or its days have passed.',
    ];
  }
  return [
    tallyInWords('days', due),
    tallyInWords('sizes', size),
    ...(overrun > 0
      ? [`${capitalized(counted(overrun, 'window'))} passed without a molt and ${overrun === 1 ? 'counts' : 'count'} as missed.`]
      : []),
    ...(open > 0 ? [`${capitalized(counted(open, 'molt'))} dated as a span could not be judged.`] : []),
  ].filter((line) => line !== null);
}

function tallyInWords(what: string, { scored, within50, within90 }: Coverage['due']): string | null {
  if (scored === 0) return null;
  return (
    `Of ${scored} foretold ${what}, ${within90} came within the wide window (right if about ${Math.round(0.9 * scored)}) ` +
    `and ${within50} within the narrow one (about ${Math.round(0.5 * scored)}).`
  );
}
