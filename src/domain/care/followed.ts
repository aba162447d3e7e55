import { type CalendarDay, dayOf, type Instant } from '../dates.ts';
import type { ExpectedMolt } from '../growth/forecast/expectedMolt.ts';
import { type GroundOfSize, oneMoltFurther } from '../growth/sizeNow.ts';
import type { Estimate } from '../measuring/quantity.ts';
import type { Exuvia } from '../molting/exuvia.ts';
import type { Molt } from '../molting/molt.ts';
import { diedIn } from '../molting/outcomes.ts';
import type { SexSign } from '../sexing/determination.ts';
import type { SaidOfAnimal } from '../sexing/live/animalFacts.ts';
import type { LiveSign } from '../sexing/live/liveSign.ts';
import { isFirm } from '../sexing/rank.ts';
import type { Specimen } from '../specimen/specimen.ts';
import { type FeedingHold, feedingHold, wasNeverLookedAt } from './feedingHold.ts';
import type { FeedingTable } from './feedingTable.ts';
import { isSurelyAfter, type LastMolt, lastMoltOf, moltWatchedOf } from './lastMolt.ts';
import { type Maturity, maturityOf } from './matureMale.ts';
import { latestEndOf, type MoltRun, mealAfterMolt, openRunOf } from './moltRun.ts';
import { type MoltTimer, moltTimer } from './moltTimer.ts';
import { inTimeOrder, type Seen } from './observation.ts';
import { type SpanNow, spanFromAnimal, spanFromSkins } from './spanNow.ts';
import { premoltSuspicion, type Suspicion } from './suspicion.ts';

/** One skin on record, and how far it has been read. */
export interface SkinState {
  readonly moltId: string;
  readonly exuvia: Pick<Exuvia, 'id' | 'recovered' | 'grade' | 'completeness'>;
  /** One of its photos, to be measured; null without any. */
  readonly photoId: string | null;
  readonly measured: boolean;
  readonly sexed: boolean;
}

/** What the skins of an animal tell of its size now. */
export interface KnownGrowth {
  readonly onSkins: GroundOfSize | null;
  /** From a photo of the living animal since its last molt on record. */
  readonly liveSpanMm: Estimate | null;
}

/** All that following one animal needs of its records. */
export interface AnimalRecords {
  readonly specimen: Pick<Specimen, 'id' | 'habit'>;
  readonly observations: readonly Seen[];
  readonly molts: readonly Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo' | 'outcomes'>[];
  readonly skins: readonly SkinState[];
  /** Asked for only where a span decides something: measuring skins anew takes time, and a list follows hundreds of animals. */
  readonly growth: () => KnownGrowth;
  readonly sex: SexSign;
  readonly determinations: SaidOfAnimal['determinations'];
  readonly liveSigns: readonly LiveSign[];
  readonly forecast: ExpectedMolt | null;
}

export interface Present {
  readonly now: Instant;
  /** The keeper's calendar day. */
  readonly today: CalendarDay;
  readonly table: FeedingTable;
}

/** A molt that was watched but not to its end, and that is over, since the animal took prey after it. */
export interface EndUnseen {
  readonly startedOn: CalendarDay;
  /** The last day on which it can have ended. */
  readonly endedBy: CalendarDay;
  readonly ateOn: CalendarDay;
}

/** Where one animal stands now. */
export interface FollowedAnimal {
  readonly records: AnimalRecords;
  readonly lastMolt: LastMolt | null;
  /** Null where it is not known, and where nothing depends on it. */
  readonly span: SpanNow | null;
  readonly timer: MoltTimer | null;
  readonly endUnseen: EndUnseen | null;
  /** The molt it died in, while its status still says that it is kept: then nothing else is followed. */
  readonly diedOn: CalendarDay | null;
  /** Null for an animal that is not held. */
  readonly hold: FeedingHold | null;
  /** The last molt, where it was long ago and nobody has noted the fangs or a meal since: held no more, but to be looked at. */
  readonly fangsUnseenSince: CalendarDay | null;
  readonly suspicion: Suspicion;
  readonly maturity: Maturity | null;
}

/**
 * Nothing is foretold for a mature male, who does not molt again, nor from before a molt that is under way or not on record yet.
 */
export function follow(all: AnimalRecords, { now, today, table }: Present): FollowedAnimal {
  const maturity = maturityOf(all);
  const isPast = moltWatchedOf(all.observations, all.molts) !== null;
  const died = diedIn(all.molts);
  const records = maturity?.kind === 'mature-male' || isPast || died ? { ...all, forecast: null } : all;
  const { observations, molts } = records;
  const open = died ? null : openRunOf(observations, molts);
  const endUnseen = endUnseenOf(open, observations);
  const run = endUnseen ? null : open;
  const lastMolt = endUnseen ? { on: endUnseen.endedBy, run: null, moltId: null } : lastMoltOf(observations, molts);
  const holdOf = (size: SpanNow | null) => lastMolt && feedingHold({ lastMolt, span: size, observations, table, today });
  // Without a size the longest wait holds: what is over by that is over by any.
  const longest = died ? null : holdOf(null);
  const surelyHardened = longest !== null && wasNeverLookedAt(longest, today);
  const perhapsHeld = longest !== null && longest.missing.length > 0 && !surelyHardened;
  const span = run || perhapsHeld ? spanOf(records, lastMolt) : null;
  const held = perhapsHeld ? holdOf(span) : null;
  // The longest of a keeper's own waits can last past the weeks in which fangs harden, and its own be over before them.
  const neverLookedAt = surelyHardened || (held !== null && wasNeverLookedAt(held, today));
  return {
    records,
    maturity,
    lastMolt,
    span,
    timer: run && moltTimer(run, span, now),
    endUnseen,
    diedOn: died?.happenedTo ?? null,
    hold: held && held.missing.length > 0 && !neverLookedAt ? held : null,
    fangsUnseenSince: neverLookedAt && !run ? (lastMolt?.on ?? null) : null,
    suspicion: premoltSuspicion({
      observations: died ? [] : observations,
      lastMolt,
      habit: records.specimen.habit,
      forecast: records.forecast,
      today,
    }),
  };
}

function endUnseenOf(run: MoltRun | null, observations: readonly Seen[]): EndUnseen | null {
  const meal = run && mealAfterMolt(run, observations);
  if (!meal) return null;
  const ateOn = dayOf(meal.moment);
  return { startedOn: dayOf(run.startedAt), endedBy: latestEndOf(run, ateOn), ateOn };
}

/**
 * What was measured on the animal since its last molt, by hand or in a photo, the larger where both were, for it waits longer; else what its last skin foretells. A molt that is watched but not yet
 * on record puts the skin of before one molt further back. A sex that is a mere leaning narrows nothing, as it would shorten the wait.
 */
function spanOf({ observations, growth, sex }: AnimalRecords, lastMolt: LastMolt | null): SpanNow | null {
  const taken = inTimeOrder(observations).findLast(
    (seen) => seen.span !== null && (lastMolt === null || isSurelyAfter(seen, lastMolt, observations)),
  );
  const byHand = taken?.span ? spanFromAnimal(taken.span) : null;
  const { onSkins, liveSpanMm } = growth();
  const isUnrecorded = lastMolt !== null && lastMolt.moltId === null;
  const onPhoto =
    liveSpanMm && !isUnrecorded ? spanFromAnimal({ spanMm: liveSpanMm.value, plusMinusMm: liveSpanMm.expandedUncertainty }) : null;
  if (byHand && onPhoto) return byHand.highMm > onPhoto.highMm ? byHand : onPhoto;
  if (byHand || onPhoto) return byHand ?? onPhoto;
  return onSkins && spanFromSkins(isUnrecorded ? oneMoltFurther(onSkins) : onSkins, isFirm(sex.level) ? sex.sex : 'unsexed');
}

/** The day a watched molt ended that nobody has put on record yet; null when there is none. */
export function unrecordedMoltOf({ lastMolt }: Pick<FollowedAnimal, 'lastMolt'>): CalendarDay | null {
  return lastMolt?.moltId === null && lastMolt.run?.endedAt ? dayOf(lastMolt.run.endedAt) : null;
}
