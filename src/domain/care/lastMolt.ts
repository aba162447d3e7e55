import { z } from 'zod';
import { CalendarDay, dayOf, minutesBetween } from '../dates.ts';
import type { Molt } from '../molting/molt.ts';
import { isRecordOf, type MoltRun, moltRunsOf, openRunOf } from './moltRun.ts';
import type { Seen } from './observation.ts';

/** The end of the latest molt, from what was watched and from what is on record. */
export interface LastMolt {
  /** The latest day it can have happened on, so that no wait is counted too short. */
  readonly on: CalendarDay;
  /** Of the watched end, where there is one: what is observed later belongs to the new instar. */
  readonly run: MoltRun | null;
  readonly moltId: string | null;
}

/** Null for an animal that has not molted here. */
export function lastMoltOf(
  observations: readonly Seen[],
  molts: readonly Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo'>[],
): LastMolt | null {
  const recorded = molts.toSorted((a, b) => (a.happenedTo < b.happenedTo ? -1 : 1)).at(-1) ?? null;
  const run = moltRunsOf(observations, molts).findLast(({ endedAt }) => endedAt !== null) ?? null;
  if (!run?.endedAt) return recorded && { on: recorded.happenedTo, run: null, moltId: recorded.id };
  const watchedOn = dayOf(run.endedAt);
  if (recorded && isRecordOf(recorded, run)) return { on: watchedOn, run, moltId: recorded.id };
  return recorded && recorded.happenedTo > watchedOn
    ? { on: recorded.happenedTo, run: null, moltId: recorded.id }
    : { on: watchedOn, run, moltId: null };
}

/** A molt that was watched and of which nothing is on record yet: under way, or ended. Then what was foretold of it is past. */
export const MoltWatched = z
  .object({ state: z.enum(['under-way', 'not-recorded']), on: CalendarDay.describe('It began, or where it has ended, ended') })
  .meta({ id: 'MoltWatched' });
export type MoltWatched = z.infer<typeof MoltWatched>;

/** Null for an animal whose last molt is on record, and for one that has not molted here. */
export function moltWatchedOf(
  observations: readonly Seen[],
  molts: readonly Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo'>[],
): MoltWatched | null {
  const run = openRunOf(observations, molts);
  if (run) return { state: 'under-way', on: dayOf(run.startedAt) };
  const last = lastMoltOf(observations, molts);
  return last?.moltId === null ? { state: 'not-recorded', on: last.on } : null;
}

/** Neither prey is taken nor are fangs black within a day of a molt (common practice, no source). */
const SOFT_FOR_MINUTES = 24 * 60;

/**
 * Whether something was seen after the molt: by the minute where its end was watched, else from the day after it on. Prey
 * taken and black fangs count from a day after it: what was noted of them sooner was before the molt, or a slip.
 */
export function isAfter(seen: Pick<Seen, 'kind' | 'moment'>, last: LastMolt): boolean {
  const needsHardFangs = seen.kind === 'ate' || seen.kind === 'fangs-black';
  if (!needsHardFangs || !last.run?.endedAt) return isOfNewInstar(seen, last);
  return minutesBetween(last.run.endedAt.at, seen.moment.at) >= SOFT_FOR_MINUTES;
}

/**
 * The same for everything that was noted since, also what cannot be. On the day of a molt known by its day the animal may still have
 * been the old one: only fangs lighter than black, which no animal has before its molt, surely came after it.
 */
export function isOfNewInstar({ kind, moment }: Pick<Seen, 'kind' | 'moment'>, last: LastMolt): boolean {
  if (last.run?.endedAt) return minutesBetween(last.run.endedAt.at, moment.at) >= 0;
  const day = dayOf(moment);
  return day > last.on || (day === last.on && isLightFangs(kind));
}

/** Whether something was seen of the animal that has molted: also on the day of the molt itself, once its fangs were seen to be light. */
export function isSurelyAfter(seen: Pick<Seen, 'kind' | 'moment'>, last: LastMolt, observations: readonly Seen[]): boolean {
  if (isAfter(seen, last)) return true;
  if (last.run?.endedAt || dayOf(seen.moment) !== last.on) return false;
  return observations.some(
    ({ kind, moment }) => isLightFangs(kind) && dayOf(moment) === last.on && minutesBetween(moment.at, seen.moment.at) >= 0,
  );
}

function isLightFangs(kind: Seen['kind']): boolean {
  return kind === 'fangs-white' || kind === 'fangs-red-brown';
}
