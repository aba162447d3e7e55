import { addDays, type CalendarDay, dayOf, type Moment, minutesBetween } from '../dates.ts';
import type { Molt } from '../molting/molt.ts';
import { inTimeOrder, isStage, type MoltStage, type Seen } from './observation.ts';

/** One molt as it was watched: from the first stage seen to the animal free of its skin. */
export interface MoltRun {
  /** The observation that began it. */
  readonly observationId: string;
  readonly startedAt: Moment;
  /** false when the animal was found with its molt under way: then it began at this moment or earlier. */
  readonly startSeen: boolean;
  readonly stages: readonly { readonly stage: MoltStage; readonly moment: Moment; readonly observationId: string }[];
  /** Null while it runs, and where only its record says that it has ended. */
  readonly endedAt: Moment | null;
}

/** The longest a molt lasts that an animal lives through (common practice, no source). */
export const MOLT_LASTS_DAYS = 2;

export const MOLT_LASTS_MINUTES = MOLT_LASTS_DAYS * 24 * 60;

/** A stage seen so soon after an end is of the same molt. Judgment. */
const SAME_MOLT_WITHIN_MINUTES = MOLT_LASTS_MINUTES;

/** A run under way in the order of time. */
type OpenRun = { -readonly [Key in keyof MoltRun]: MoltRun[Key] } & {
  stages: { stage: MoltStage; moment: Moment; observationId: string }[];
};

/**
 * Every molt of one animal of which a stage was observed, oldest first. An end without a start is a run of its own, and what is
 * seen after a molt was put on record belongs to the next one, also where nobody watched the first to its end. A stage seen within
 * two days after an end belongs to that molt, whatever it says; of two ends of one molt the later counts.
 */
export function moltRunsOf(observations: readonly Seen[], molts: readonly Pick<Molt, 'happenedTo'>[]): MoltRun[] {
  const runs: OpenRun[] = [];
  for (const { id, kind, moment } of inTimeOrder(observations)) {
    if (!isStage(kind)) continue;
    const last = runs.at(-1);
    const run = last && isOfRun(last, moment, molts) ? last : begun(runs, { id, moment, startSeen: kind === 'turned-over' });
    run.stages.push({ stage: kind, moment, observationId: id });
    if (kind === 'free-of-skin') run.endedAt = moment;
  }
  return runs;
}

/** The molt under way: begun, not ended, and no molt on record that happened on its first day or later. */
export function openRunOf(observations: readonly Seen[], molts: readonly Pick<Molt, 'happenedTo'>[]): MoltRun | null {
  const last = moltRunsOf(observations, molts).at(-1);
  if (!last || last.endedAt !== null) return null;
  return molts.some(({ happenedTo }) => happenedTo >= dayOf(last.startedAt)) ? null : last;
}

/** The first meal that tells that a molt of which nobody noted the end is over, since none lasts so long; null where there is none. */
export function mealAfterMolt({ startedAt }: MoltRun, observations: readonly Seen[]): Seen | null {
  const meals = inTimeOrder(observations.filter(({ kind }) => kind === 'ate'));
  return meals.find(({ moment }) => minutesBetween(startedAt.at, moment.at) >= MOLT_LASTS_MINUTES) ?? null;
}

/** The last day on which a molt of which nobody noted the end can have ended. */
export function latestEndOf({ startedAt }: Pick<MoltRun, 'startedAt'>, today: CalendarDay): CalendarDay {
  const latest = addDays(dayOf(startedAt), MOLT_LASTS_DAYS);
  return latest < today ? latest : today;
}

/** Whether the record of a molt can be of this run: its days, give or take one for a night, meet the day it ended. */
export function isRecordOf(
  { happenedFrom, happenedTo }: Pick<Molt, 'happenedFrom' | 'happenedTo'>,
  run: Pick<MoltRun, 'endedAt'>,
): boolean {
  if (run.endedAt === null) return false;
  const day = dayOf(run.endedAt);
  return addDays(happenedFrom, -1) <= day && day <= addDays(happenedTo, 1);
}

function isOfRun(run: OpenRun, moment: Moment, molts: readonly Pick<Molt, 'happenedTo'>[]): boolean {
  if (run.endedAt !== null) return minutesBetween(run.endedAt.at, moment.at) <= SAME_MOLT_WITHIN_MINUTES;
  return !isRecordedBefore(run, moment, molts);
}

/** Whether a molt on record ended a run before a moment; what is seen the day after may still be of it, as molts last a night. */
function isRecordedBefore({ startedAt }: Pick<MoltRun, 'startedAt'>, moment: Moment, molts: readonly Pick<Molt, 'happenedTo'>[]): boolean {
  return molts.some(({ happenedTo }) => dayOf(startedAt) <= happenedTo && addDays(happenedTo, 1) < dayOf(moment));
}

function begun(runs: OpenRun[], { id, moment, startSeen }: { id: string; moment: Moment; startSeen: boolean }): OpenRun {
  const run: OpenRun = { observationId: id, startedAt: moment, startSeen, stages: [], endedAt: null };
  runs.push(run);
  return run;
}
