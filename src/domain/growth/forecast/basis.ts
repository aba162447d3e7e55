import { z } from 'zod';
import { CalendarDay } from '../../dates.ts';
import { LastSkin } from '../belief/growthBelief.ts';
import { ForecastFact } from '../belief/growthRecord.ts';
import { LineBasis } from '../belief/lineBasis.ts';

/** Raised whenever the same record would give another forecast. */
export const FORECAST_MODEL = 6;

/** Where the running interval began. */
export const IntervalStart = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('molt'), moltId: z.string(), from: CalendarDay, to: CalendarDay }),
    z.object({ kind: z.literal('hatched'), on: CalendarDay }),
    z.object({ kind: z.literal('acquired'), on: CalendarDay }).describe('Somewhere before: the interval was running then'),
  ])
  .meta({ id: 'IntervalStart' });
export type IntervalStart = z.infer<typeof IntervalStart>;

/** Everything a forecast follows from: with it and its model it can be made again years later, whatever kin did since. */
export const ForecastBasis = z
  .object({
    model: z.int().min(1),
    madeOn: CalendarDay,
    start: IntervalStart.nullable(),
    instar: z.number().describe('In which the animal lives now'),
    facts: z.array(ForecastFact),
    interval: LineBasis,
    growth: LineBasis,
    lastSkin: LastSkin.nullable(),
  })
  .meta({ id: 'ForecastBasis' });
export type ForecastBasis = z.infer<typeof ForecastBasis>;
