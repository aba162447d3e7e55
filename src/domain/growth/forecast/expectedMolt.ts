import { z } from 'zod';
import { CalendarDay } from '../../dates.ts';
import type { DueForecast } from './dueForecast.ts';

/** How far the running interval has come, by the share of such intervals that have ended as early. */
export const IntervalStage = z.enum(['early', 'window', 'past-likely', 'overdue']).meta({
  id: 'IntervalStage',
  description: 'From a quarter ended on: window; from half: past-likely; from 19 of 20: overdue, unless mostly assumed',
});
export type IntervalStage = z.infer<typeof IntervalStage>;

/** The next molt as a forecast of today has it, to watch an animal by. */
export const ExpectedMolt = z
  .object({
    from: CalendarDay,
    likely: CalendarDay,
    to: CalendarDay.describe('Nine chances in ten that it comes from `from` to here; the same days as on the page of the animal'),
    stage: IntervalStage,
    told: z.boolean().describe('False where it has waited so long that no day can be told any more'),
    assumed: z.boolean().describe('It rests for the most part on what is assumed of all tarantulas: nothing is advised by it'),
  })
  .meta({ id: 'ExpectedMolt' });
export type ExpectedMolt = z.infer<typeof ExpectedMolt>;

const STAGES = [
  { stage: 'overdue', below: 0.05 },
  { stage: 'past-likely', below: 0.5 },
  { stage: 'window', below: 0.75 },
] as const;

/** More than this share of assumption is no ground for advice: an assumption of ours too. */
const MOSTLY = 0.5;

/** An animal is not called overdue by what is mostly assumed: grown females wait longer than the middle of all tarantulas. */
export function stageOf({ chanceOfLasting, shares }: Pick<DueForecast, 'chanceOfLasting' | 'shares'>): IntervalStage {
  const stage = STAGES.find(({ below }) => chanceOfLasting <= below)?.stage ?? 'early';
  return stage === 'overdue' && isAssumed(shares) ? 'past-likely' : stage;
}

export function isOverdue(due: Pick<DueForecast, 'chanceOfLasting' | 'shares'>): boolean {
  return stageOf(due) === 'overdue';
}

/** So few intervals last as long that an unseen molt, a male who has grown up or a record that ended is likelier: an assumption of ours. */
const LEAST_TOLD = 0.01;

/** Whether the days of a forecast still say anything: in the far tail of the law the rest of any interval looks like a day or two. */
export function isDayTold({ chanceOfLasting }: Pick<DueForecast, 'chanceOfLasting'>): boolean {
  return chanceOfLasting >= LEAST_TOLD;
}

function isAssumed({ prior }: DueForecast['shares']): boolean {
  return prior > MOSTLY;
}

/**
 * The days are those of the forecast, so they move on with every day that the animal waits and never lie in the past; that it has
 * waited long is told by the stage, which only the interval's own law decides. Null where the beginning was not seen.
 */
export function expectedMoltFrom(due: DueForecast): ExpectedMolt | null {
  if (due.since.kind === 'acquired') return null;
  const { middle, window90, shares } = due;
  return { from: window90.from, likely: middle, to: window90.to, stage: stageOf(due), told: isDayTold(due), assumed: isAssumed(shares) };
}

/** The forecast where something may be advised by it. */
export function groundsIn(forecast: ExpectedMolt | null): ExpectedMolt | null {
  return forecast?.assumed ? null : forecast;
}
