import { z } from 'zod';
import { studentTQuantile } from '../../numerics/studentT.ts';
import { FEWEST_RUNGS_FOR_FIT } from '../growthFit.ts';
import type { MeasuredStep } from '../measuredStep.ts';
import { fitAccumulated } from './accumulatedFit.ts';

/** The ratio with each skin weighted by how well it was read and by the scatter of growth that has added up to it. */
export const WeightedFit = z
  .object({
    rungs: z.int().min(3),
    slope: z.number(),
    ratio: z.number().describe('exp(b), later over earlier'),
    ratioLow95: z.number(),
    ratioHigh95: z.number(),
    scatter: z.number().min(0).describe('Standard deviation of ln r of single molts that the readings do not explain'),
  })
  .meta({ id: 'WeightedFit' });
export type WeightedFit = z.infer<typeof WeightedFit>;

/**
 * Fits `ln L = a + b n` by `fitAccumulated`. 95 % interval of the ratio exp(b -+ t s_b) with Student's t on n - 2 degrees of freedom;
 * the tests hold it against simulated animals of known ratio.
 *
 * @param sizes in rising order of step.
 * @returns null with fewer than three sizes, and where the interval is too wide for a number.
 */
export function fitWeighted(sizes: readonly MeasuredStep[]): WeightedFit | null {
  if (sizes.length < FEWEST_RUNGS_FOR_FIT) return null;
  const fit = fitAccumulated(sizes, 1);
  if (!fit) return null;
  const [, slope = 0] = fit.coefficients;
  const reach = studentTQuantile(0.975, fit.degreesOfFreedom) * (fit.standardErrors[1] ?? 0);
  const [ratioLow95, ratioHigh95] = [Math.exp(slope - reach), Math.exp(slope + reach)];
  if (!Number.isFinite(ratioHigh95)) return null;
  return { rungs: sizes.length, slope, ratio: Math.exp(slope), ratioLow95, ratioHigh95, scatter: Math.sqrt(fit.scatterVariance) };
}
