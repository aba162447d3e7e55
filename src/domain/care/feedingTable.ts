import { z } from 'zod';
import { addDays, addMonths, type CalendarDay } from '../dates.ts';
import { mmFromInches } from '../units.ts';

export const Wait = z.object({ count: z.int().min(0).max(366), unit: z.enum(['days', 'months']) }).meta({ id: 'Wait' });
export type Wait = z.infer<typeof Wait>;

/** One row: how long animals wait for prey from a span on, up to the next row. */
export const FeedingRow = z
  .object({
    fromMm: z.number().min(0).max(1_000),
    fromIncluded: z.boolean().describe('Whether an animal of exactly this span belongs here rather than to the row before'),
    wait: Wait,
  })
  .meta({ id: 'FeedingRow' });
export type FeedingRow = z.infer<typeof FeedingRow>;

/** How long to offer nothing after a molt, by the leg span after it. */
export const FeedingTable = z
  .array(FeedingRow)
  .min(1)
  .max(12)
  .refine((rows) => rows[0]?.fromMm === 0 && rows[0].fromIncluded, { message: 'Expected the first row to begin at 0 mm' })
  .refine((rows) => rows.every((row, index) => index === 0 || row.fromMm > (rows[index - 1]?.fromMm ?? 0)), {
    message: 'Expected each row to begin at a longer span than the one before',
  })
  .meta({ id: 'FeedingTable' });
export type FeedingTable = z.infer<typeof FeedingTable>;

/**
 * The default. Under 1 in and up to 2 in: judgment. Over 2 in three weeks, 4 in and more one calendar month: common practice of
 * cautious keepers, no source. Exactly 1 in waits as the second row, exactly 2 in still does, exactly 4 in as the last.
 */
export const CAUTIOUS_FEEDING_TABLE: FeedingTable = [
  { fromMm: 0, fromIncluded: true, wait: { count: 4, unit: 'days' } },
  { fromMm: mmFromInches(1), fromIncluded: true, wait: { count: 7, unit: 'days' } },
  { fromMm: mmFromInches(2), fromIncluded: false, wait: { count: 21, unit: 'days' } },
  { fromMm: mmFromInches(4), fromIncluded: true, wait: { count: 1, unit: 'months' } },
];

/** What other keepers wait with adults (common practice, no source); shown beside the default. */
export const OTHERS_WAIT_DAYS = { from: 7, to: 14 } as const;

/** What even the shortest customs wait after any molt (common practice, no source), and with adults, from `OTHERS_WAIT_DAYS` on. */
const ANYBODY_WAITS_DAYS = 2;

/** Wherever a wait is shorter than anybody's custom for the longest animals it holds for: none at all is no wait. */
export function tooShortRows(table: FeedingTable): FeedingRow[] {
  return table.filter(({ wait }, index) => {
    const next = table[index + 1];
    const holdsForAdults = !next || next.fromMm > mmFromInches(2);
    const least = holdsForAdults ? OTHERS_WAIT_DAYS.from : ANYBODY_WAITS_DAYS;
    return wait.unit === 'months' ? wait.count === 0 : wait.count < least;
  });
}

export function waitEnds(moltedOn: CalendarDay, { count, unit }: Wait): CalendarDay {
  return unit === 'days' ? addDays(moltedOn, count) : addMonths(moltedOn, count);
}

/** Every row that animals of these spans fall into, the shortest spans first. Both ends belong to the interval. */
export function rowsFor(table: FeedingTable, lowMm: number, highMm: number): FeedingTable {
  return table.filter((row, index) => {
    const next = table[index + 1];
    return begins(row, highMm) && !(next && begins(next, lowMm));
  });
}

function begins({ fromMm, fromIncluded }: FeedingRow, spanMm: number): boolean {
  return fromIncluded ? spanMm >= fromMm : spanMm > fromMm;
}
