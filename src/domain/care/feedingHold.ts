import { z } from 'zod';
import { addDays, CalendarDay, Moment } from '../dates.ts';
import { fangsSince } from './fangs.ts';
import { type FeedingTable, rowsFor, Wait, waitEnds } from './feedingTable.ts';
import { isAfter, type LastMolt } from './lastMolt.ts';
import { FangColor, type Seen } from './observation.ts';
import { SpanNow } from './spanNow.ts';

/**
 * Fangs nobody looked at are taken as black so long after a molt, or at the end of the wait if that is later: hardening takes
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
    missing: z.array(z.enum(['date', 'fangs'])).describe('What the hold still waits for; empty when it is over'),
    endedBy: z.enum(['both', 'has-eaten', 'long-ago']).nullable().describe('null while it lasts'),
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

/** The hold after the last molt. It ends by date and fangs together; an animal that has eaten since, or long ago, is not held. */
export function feedingHold({ lastMolt, span, observations, table, today }: HoldContext): FeedingHold {
  const moltedOn = lastMolt.on;
  const rows = span ? rowsFor(table, span.lowMm, span.highMm) : table;
  const { wait, until } = longest(rows.length > 0 ? rows : table, moltedOn);
  const fangs = fangsSince(lastMolt, observations);
  const missing: FeedingHold['missing'] = [];
  if (today < until) missing.push('date');
  if (fangs?.color !== 'fangs-black') missing.push('fangs');
  const endedBy = missing.length === 0 ? 'both' : endedOtherwise({ until, fangsNoted: fangs !== null, lastMolt, observations, today });
  return { moltedOn, until, wait, span, straddles: span !== null && rows.length > 1, fangs, missing: endedBy ? [] : missing, endedBy };
}

interface Ending extends Pick<HoldContext, 'lastMolt' | 'observations' | 'today'> {
  readonly until: CalendarDay;
  readonly fangsNoted: boolean;
}

function endedOtherwise({ until, fangsNoted, lastMolt, observations, today }: Ending): FeedingHold['endedBy'] {
  if (observations.some((seen) => seen.kind === 'ate' && isAfter(seen, lastMolt))) return 'has-eaten';
  const hardened = addDays(lastMolt.on, HARDENED_AFTER_DAYS);
  return !fangsNoted && today >= until && today >= hardened ? 'long-ago' : null;
}

function longest(rows: FeedingTable, moltedOn: CalendarDay): { wait: Wait; until: CalendarDay } {
  const ends = rows.map(({ wait }) => ({ wait, until: waitEnds(moltedOn, wait) }));
  return ends.reduce((found, next) => (next.until > found.until ? next : found));
}
