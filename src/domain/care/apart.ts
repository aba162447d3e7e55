import { addDays, type CalendarDay, dayOf, daysBetween, minutesBetween } from '../dates.ts';
import type { Failure } from '../failure.ts';
import type { Molt, MoltDraft } from '../molting/molt.ts';
import { fail, type Result, succeed } from '../result.ts';
import { isRecordOf, MOLT_LASTS_DAYS, type MoltRun, moltRunsOf } from './moltRun.ts';
import type { Seen } from './observation.ts';

/**
 * No animal molts again sooner. Spiderlings molt about weekly at their fastest (spidersalive.co.za, "growth", n.d.: a keepers’ page),
 * and days are noted late; two molts closer than this are one, or one of the days is a slip. Judgment.
 */
export const MOLTS_APART_DAYS = 5;

type TooClose = Extract<Failure, { code: 'molts-too-close' }>;
type OnRecord = Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo'>;

/** What the days of a molt to be put on record are held against. */
export interface ApartContext {
  readonly molts: readonly (OnRecord & Pick<Molt, 'outcomes'>)[];
  readonly observations: readonly Seen[];
  /** The molt the draft changes; null for a new one. */
  readonly replacing: string | null;
}

/**
 * Whether a molt can be put on record on these days: not where another molt, on record or watched, lies so near that it cannot have been
 * a second one. Days given as a span count as far apart as they may be; presumed molts have no days. Failure: `molts-too-close`.
 */
export function checkApart(draft: MoltDraft, { molts, observations, replacing }: ApartContext): Result<MoltDraft> {
  if (draft.outcomes.includes('presumed')) return succeed(draft);
  const days = daysOfRecord(draft);
  const others = molts.filter(({ id, outcomes }) => id !== replacing && !outcomes.includes('presumed'));
  const record = others.find((other) => areTooClose(days, daysOfRecord(other)));
  if (record) return fail(tooClose(draft.happenedTo, record.happenedTo));
  const run = moltRunsOf(observations, others).find((one) => !isOfRecord(draft, one) && areTooClose(days, daysOfRun(one)));
  return run ? fail(tooClose(draft.happenedTo, daysOfRun(run).to)) : succeed(draft);
}

/** Another molt that lies too near the one a stage was just noted of; null where none does. */
export function neighborTooClose(run: MoltRun, runs: readonly MoltRun[], molts: readonly OnRecord[]): TooClose | null {
  const day = daysOfRun(run).to;
  const other = runs.find((one) => one !== run && minutesApart(one, run) < MOLTS_APART_DAYS * 24 * 60);
  if (other) return tooClose(day, daysOfRun(other).to);
  const record = molts.find((one) => !isOfRecord(one, run) && areTooClose(daysOfRun(run), daysOfRecord(one)));
  return record ? tooClose(day, record.happenedTo) : null;
}

interface Days {
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

function tooClose(date: CalendarDay, neighbourDate: CalendarDay): TooClose {
  return { code: 'molts-too-close', date, neighbourDate, apartDays: MOLTS_APART_DAYS };
}

function daysOfRecord({ happenedFrom, happenedTo }: Pick<Molt, 'happenedFrom' | 'happenedTo'>): Days {
  return { from: happenedFrom, to: happenedTo };
}

function daysOfRun({ startedAt, endedAt }: MoltRun): Days {
  return endedAt ? { from: dayOf(endedAt), to: dayOf(endedAt) } : { from: dayOf(startedAt), to: dayOf(startedAt) };
}

/** At most so far apart as the farthest of their days. */
function areTooClose(one: Days, other: Days): boolean {
  return Math.max(daysBetween(one.from, other.to), daysBetween(other.from, one.to)) < MOLTS_APART_DAYS;
}

/** A run of which nobody noted the end is of a record whose days meet those it can have lasted, give or take a night. */
function isOfRecord(record: Pick<Molt, 'happenedFrom' | 'happenedTo'>, run: MoltRun): boolean {
  if (run.endedAt) return isRecordOf(record, run);
  const started = dayOf(run.startedAt);
  return record.happenedTo >= addDays(started, -1) && record.happenedFrom <= addDays(started, MOLT_LASTS_DAYS + 1);
}

function minutesApart(one: MoltRun, other: MoltRun): number {
  const [first, second] = Date.parse(one.startedAt.at) <= Date.parse(other.startedAt.at) ? [one, other] : [other, one];
  return minutesBetween((first.endedAt ?? first.startedAt).at, second.startedAt.at);
}
