import { type CalendarDay, dayOf } from '../dates.ts';
import type { Molt } from '../molting/molt.ts';
import { isRecordOf, type MoltRun, moltRunsOf } from './moltRun.ts';
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

/**
 * Whether something was seen after the molt: by the minute where its end was watched, else from the day of the molt on. Prey
 * taken and black fangs seen on that day were before it: neither is possible within a day of a molt (common practice, no source).
 */
export function isAfter({ kind, moment }: Pick<Seen, 'kind' | 'moment'>, last: LastMolt): boolean {
  if (last.run?.endedAt) return Date.parse(moment.at) >= Date.parse(last.run.endedAt.at);
  return kind === 'ate' || kind === 'fangs-black' ? dayOf(moment) > last.on : dayOf(moment) >= last.on;
}
