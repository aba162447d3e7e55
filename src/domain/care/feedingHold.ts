import { z } from 'zod';
import { addDays, CalendarDay, dayOf, Moment } from '../dates.ts';
import { fangsSince } from './fangs.ts';
import { type FeedingTable, rowsFor, Wait, waitEnds } from './feedingTable.ts';
import { isOfNewInstar, type LastMolt } from './lastMolt.ts';
import { FangColor, inTimeOrder, type Seen } from './observation.ts';
import { SpanNow } from './spanNow.ts';

/**
 * Fangs nobody looked at hold an animal no longer than this after a molt, or to the end of the wait if that is later: hardening takes
 * one to three weeks in adults (common practice, no source); four times that is judgment.
 */
const HARDENED_AFTER_DAYS = 84;

/** No prey after a molt until both the date is reached and the fangs are black. */
export const FeedingHold = z
  .object({
    moltedOn: CalendarDay,
    until: CalendarDay.describe('The first day on which the wait is over'),
    wait: Wait,
    span: SpanNow.nullable().describe('null for an animal without any size: it waits as the row that waits longest'),
    straddles: z.boolean().describe('The span may belong to more than one row: the longest wait of them is taken'),
    fangs: z.object({ color: FangColor, moment: Moment }).nullable().describe('Last noted since the molt'),
    ateOn: CalendarDay.nullable().describe('Of the last meal noted since the molt: while the hold lasts, too early or a slip'),
    missing: z.array(z.enum(['date', 'fangs'])).describe('What the hold still waits for; empty when it is over'),
  })
  .meta({ id: 'FeedingHold' });
export type FeedingHold = z.infer<typeof FeedingHold>;

export interface HoldContext {
  readonly lastMolt: LastMolt;
  readonly span: SpanNow | null;
  readonly observations: readonly Seen[];
  readonly table: FeedingTable;
  readonly today: CalendarDay;
}

/**
 * The hold after the last molt. It ends by date and fangs together. Prey taken when the wait was over says of fangs that nobody
 * noted that they are hard; taken earlier it says nothing, nor does it against fangs noted as white or red-brown.
 */
export function feedingHold({ lastMolt, span, observations, table, today }: HoldContext): FeedingHold {
  const moltedOn = lastMolt.on;
  const rows = span ? rowsFor(table, span.lowMm, span.highMm) : table;
  const { wait, until } = longest(rows.length > 0 ? rows : table, moltedOn);
  const fangs = fangsSince(lastMolt, observations);
  const meals = inTimeOrder(observations.filter((seen) => seen.kind === 'ate' && isOfNewInstar(seen, lastMolt)));
  const lastMeal = meals.at(-1);
  const fangsHard = fangs === null ? meals.some((meal) => dayOf(meal.moment) >= until) : fangs.color === 'fangs-black';
  const missing: FeedingHold['missing'] = [];
  if (today < until) missing.push('date');
  if (!fangsHard) missing.push('fangs');
  const ateOn = lastMeal ? dayOf(lastMeal.moment) : null;
  return { moltedOn, until, wait, span, straddles: span !== null && rows.length > 1, fangs, ateOn, missing };
}

/** Whether only fangs are missing that nobody has noted for so long that the animal is held no more: a look before feeding is due. */
export function wasNeverLookedAt({ moltedOn, fangs, missing }: FeedingHold, today: CalendarDay): boolean {
  return fangs === null && missing.length === 1 && missing[0] === 'fangs' && today >= addDays(moltedOn, HARDENED_AFTER_DAYS);
}

function longest(rows: FeedingTable, moltedOn: CalendarDay): { wait: Wait; until: CalendarDay } {
  const ends = rows.map(({ wait }) => ({ wait, until: waitEnds(moltedOn, wait) }));
  return ends.reduce((found, next) => (next.until > found.until ? next : found));
}
