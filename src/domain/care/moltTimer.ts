import { z } from 'zod';
import { type Instant, Moment, minutesBetween } from '../dates.ts';
import { MM_PER_INCH } from '../units.ts';
import type { MoltRun } from './moltRun.ts';
import { MoltStage } from './observation.ts';
import type { SpanNow } from './spanNow.ts';

export const MoltingSize = z.enum(['smallest', 'juvenile', 'large']).meta({ id: 'MoltingSize' });
export type MoltingSize = z.infer<typeof MoltingSize>;

/** What a molt of animals of one size takes from turning over to free of the skin. */
export interface MoltPace {
  readonly usualMinutes: { readonly from: number; readonly to: number };
  readonly lookCloserAfterMinutes: number;
  readonly concernAfterMinutes: number;
}

const HOUR = 60;

/**
 * Half an hour for the smallest, and that large animals can pass 24 hours while anything near 48 is too long: common
 * practice, no source. The other figures are judgment.
 */
export const MOLT_PACES: Readonly<Record<MoltingSize, MoltPace>> = {
  smallest: { usualMinutes: { from: HOUR / 2, to: HOUR / 2 }, lookCloserAfterMinutes: 6 * HOUR, concernAfterMinutes: 12 * HOUR },
  juvenile: { usualMinutes: { from: HOUR, to: 6 * HOUR }, lookCloserAfterMinutes: 12 * HOUR, concernAfterMinutes: 24 * HOUR },
  large: { usualMinutes: { from: 3 * HOUR, to: 24 * HOUR }, lookCloserAfterMinutes: 24 * HOUR, concernAfterMinutes: 36 * HOUR },
};

/** Spans at which an animal leaves one size for the next; judgment, the inches of the feeding table taken over. */
const JUVENILE_FROM_MM = MM_PER_INCH;
const LARGE_FROM_MM = 4 * MM_PER_INCH;

export const MoltTimer = z
  .object({
    observationId: z.string(),
    startedAt: Moment,
    startSeen: z.boolean().describe('false when found under way: the time passed is then a lower bound'),
    lastStage: MoltStage,
    elapsedMinutes: z.number().nullable().describe('null while the clock stands before the start'),
    state: z.enum(['usual', 'look-closer', 'concern', 'clock-set-back']),
    size: MoltingSize,
    sizeKnown: z.boolean().describe('false where no size is known and the shortest limits are taken, those of the smallest'),
    usualMinutes: z.object({ from: z.number(), to: z.number() }),
    lookCloserAfterMinutes: z.number(),
    concernAfterMinutes: z.number(),
  })
  .meta({ id: 'MoltTimer' });
export type MoltTimer = z.infer<typeof MoltTimer>;

/**
 * Where a molt under way stands against the pace of its size. Nothing but the stored start and the clock goes in, so it comes
 * out the same after a restart, a sleep or a change of time zone; a limit is passed only after it, not at it. A clock that
 * stands before the start tells nothing and is said to. A span that straddles two sizes takes the shorter limits, and no
 * span the shortest: a look costs nothing.
 */
export function moltTimer(run: MoltRun, span: SpanNow | null, now: Instant): MoltTimer {
  const size = moltingSizeOf(span);
  const pace = MOLT_PACES[size];
  const elapsed = minutesBetween(run.startedAt.at, now);
  return {
    observationId: run.observationId,
    startedAt: run.startedAt,
    startSeen: run.startSeen,
    lastStage: run.stages.at(-1)?.stage ?? 'turned-over',
    elapsedMinutes: elapsed < 0 ? null : elapsed,
    state: stateAfter(elapsed, pace),
    size,
    sizeKnown: span !== null,
    ...pace,
  };
}

export function stateAfter(elapsedMinutes: number, pace: MoltPace): MoltTimer['state'] {
  if (elapsedMinutes < 0) return 'clock-set-back';
  if (elapsedMinutes > pace.concernAfterMinutes) return 'concern';
  return elapsedMinutes > pace.lookCloserAfterMinutes ? 'look-closer' : 'usual';
}

function moltingSizeOf(span: Pick<SpanNow, 'lowMm'> | null): MoltingSize {
  if (span === null) return 'smallest';
  if (span.lowMm < JUVENILE_FROM_MM) return 'smallest';
  return span.lowMm < LARGE_FROM_MM ? 'juvenile' : 'large';
}
