import { z } from 'zod';
import { CalendarDay } from '../../dates.ts';
import { LineBelief } from './belief.ts';
import { ForecastFact } from './growthRecord.ts';
import { Shares } from './shares.ts';
import { WeighedReading } from './stepObservation.ts';

/** Raised whenever the same record would give another forecast. */
export const FORECAST_MODEL = 2;

/** One quantity: what kin say of the animal's line, and its own steps. */
export const LineBasis = z
  .object({
    kin: LineBelief,
    kinShares: Shares.omit({ own: true }),
    rows: z.array(WeighedReading),
    scatterVariance: z.number().positive().describe('Of the logarithm of a single molt'),
    degreesOfFreedom: z.number().positive(),
  })
  .meta({ id: 'LineBasis' });
export type LineBasis = z.infer<typeof LineBasis>;

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
    lastSkin: z
      .object({
        moltId: z.string(),
        lengthMm: z.number().positive(),
        uncertaintyMm: z.number().min(0),
        instar: z.number(),
      })
      .nullable()
      .describe('The latest measured one whose place is known'),
  })
  .meta({ id: 'ForecastBasis' });
export type ForecastBasis = z.infer<typeof ForecastBasis>;
