import { leastSquares } from '../numerics/leastSquares.ts';
import { studentTQuantile } from '../numerics/studentT.ts';
import type { GrowthFit } from './rung.ts';

/** Fewer sizes leave no degree of freedom, so no interval. */
export const FEWEST_RUNGS_FOR_FIT = 3;

/** A size on the ladder: the instar as a count from any fixed one, and the length, above zero. */
export interface SizeAtStep {
  readonly step: number;
  readonly lengthMm: number;
}

/**
 * Fits the Brooks-Dyar rule `ln L = a + b n` by ordinary least squares: sclerotised parts grow by a nearly constant factor
 * `exp(b)` at each molt (Dyar HG 1890, Psyche 5:420-422). The 95 % interval of the factor is exp(b -+ t s_b) with Student's t
 * on n - 2 degrees of freedom. Unweighted: real series scatter round the rule by several per cent, far more than a skin's
 * reading, so the reading's uncertainty is not what limits the fit.
 *
 * @param sizes in rising order of step. Missing instars are simply absent; their steps stay counted.
 * @returns null with fewer than three sizes.
 */
export function fitGrowth(sizes: readonly SizeAtStep[]): GrowthFit | null {
  const first = sizes[0];
  const last = sizes.at(-1);
  if (!first || !last || sizes.length < FEWEST_RUNGS_FOR_FIT) return null;

  const fit = leastSquares(
    sizes.map(({ step }) => [1, step]),
    sizes.map(({ lengthMm }) => Math.log(lengthMm)),
  );
  const [intercept = 0, slope = 0] = fit.coefficients;
  const [, slopeError = 0] = fit.standardErrors;
  const reach = studentTQuantile(0.975, fit.degreesOfFreedom) * slopeError;
  return {
    rungs: sizes.length,
    intercept,
    slope,
    ratio: Math.exp(slope),
    ratioLow95: Math.exp(slope - reach),
    ratioHigh95: Math.exp(slope + reach),
    geometricMeanRatio: (last.lengthMm / first.lengthMm) ** (1 / (last.step - first.step)),
    rSquared: fit.rSquared,
    residualStandardDeviation: fit.residualStandardDeviation,
  };
}
