import { z } from 'zod';
import { weightedLeastSquares } from '../../numerics/leastSquares.ts';
import { studentTQuantile } from '../../numerics/studentT.ts';
import { FEWEST_RUNGS_FOR_FIT } from '../growthFit.ts';
import type { MeasuredStep } from '../measuredStep.ts';

/** The line with each rung weighted by how well it is known: reading and scatter of growth together. */
export const WeightedFit = z
  .object({
    intercept: z.number(),
    slope: z.number(),
    ratio: z.number().describe('exp(b), later over earlier'),
    ratioLow95: z.number(),
    ratioHigh95: z.number(),
    excessScatter: z.number().min(0).describe('Standard deviation of ln L about the line that the readings do not explain'),
  })
  .meta({ id: 'WeightedFit' });
export type WeightedFit = z.infer<typeof WeightedFit>;

/**
 * Fits `ln L = a + b n` with weights 1 / (u_i^2 + s^2): u_i = u(L_i) / L_i from the reading, s the scatter of growth itself,
 * chosen so that the weighted residual sum of squares equals its expectation n - 2 (Paule RC, Mandel J 1982, J. Res. Natl.
 * Bur. Stand. 87:377-385; from memory). A skin read badly counts less, yet none can dominate by having been read well.
 * 95 % interval of exp(b) with Student's t on n - 2 degrees of freedom.
 *
 * @param sizes in rising order of step.
 * @returns null with fewer than three sizes, and where the interval is too wide for a number.
 */
export function fitWeighted(sizes: readonly MeasuredStep[]): WeightedFit | null {
  if (sizes.length < FEWEST_RUNGS_FOR_FIT) return null;
  const variances = sizes.map(({ lengthMm, uncertaintyMm }) => (uncertaintyMm / lengthMm) ** 2);
  const weightsWith = (excess: number) => variances.map((variance) => 1 / (variance + excess));
  const fitWith = (excess: number) =>
    weightedLeastSquares(
      sizes.map(({ step }) => [1, step]),
      sizes.map(({ lengthMm }) => Math.log(lengthMm)),
      weightsWith(excess),
    );
  const excess = excessVariance((trial) => fitWith(trial).residualSumOfSquares, sizes.length - 2);
  const fit = fitWith(excess);
  const [intercept = 0, slope = 0] = fit.coefficients;
  // What the weights alone leave open of b; more where the rungs scatter beyond them.
  const slopeError = Math.max(fit.standardErrors[1] ?? 0, weightedSpread(sizes, weightsWith(excess)) ** -0.5);
  const reach = studentTQuantile(0.975, fit.degreesOfFreedom) * slopeError;
  const [ratioLow95, ratioHigh95] = [Math.exp(slope - reach), Math.exp(slope + reach)];
  if (!Number.isFinite(ratioHigh95)) return null;
  return {
    intercept,
    slope,
    ratio: Math.exp(slope),
    ratioLow95,
    ratioHigh95,
    excessScatter: excess > LEAST_VARIANCE ? Math.sqrt(excess) : 0,
  };
}

/** Sum of weighted squares of the steps about their weighted mean. */
function weightedSpread(sizes: readonly MeasuredStep[], weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = sizes.reduce((sum, { step }, i) => sum + (weights[i] ?? 0) * step, 0) / total;
  return sizes.reduce((sum, { step }, i) => sum + (weights[i] ?? 0) * (step - mean) ** 2, 0);
}

/** Keeps exact readings of an exact progression from having infinite weight: a scatter of 1e-6, far below any reading. */
const LEAST_VARIANCE = 1e-12;

/** The variance at which the weighted sum, which falls with it, meets its expectation; bisected on a logarithmic scale. */
function excessVariance(weightedSum: (excess: number) => number, expected: number): number {
  if (weightedSum(LEAST_VARIANCE) <= expected) return LEAST_VARIANCE;
  let low = Math.log(LEAST_VARIANCE);
  let high = 0;
  while (weightedSum(Math.exp(high)) > expected) high += 1;
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2;
    if (weightedSum(Math.exp(middle)) > expected) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}
