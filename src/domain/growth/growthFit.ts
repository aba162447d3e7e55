import { leastSquares } from '../numerics/leastSquares.ts';

/** Fewer sizes leave no degree of freedom, so nothing to judge a fit by. */
export const FEWEST_RUNGS_FOR_FIT = 3;

/** A size on the ladder: the instar as a count from any fixed one, and the length, above zero. */
export interface SizeAtStep {
  readonly step: number;
  readonly lengthMm: number;
}

/** Least squares of ln L on the step (`ln L = a + b n`). */
export interface GrowthFit {
  readonly rungs: number;
  readonly intercept: number;
  readonly slope: number;
  /** exp(b), later over earlier. */
  readonly ratio: number;
  readonly geometricMeanRatio: number;
  readonly rSquared: number;
  readonly residualStandardDeviation: number;
}

/**
 * Fits the Brooks-Dyar rule `ln L = a + b n` by ordinary least squares: sclerotised parts grow by a nearly constant factor
 * `exp(b)` at each molt (Dyar HG 1890, Psyche 5:420-422). The classical figure, as papers print it, and without an interval: it takes
 * the sizes as independent about one line, while the scatter of growth adds up from molt to molt. An interval told so holds the true
 * ratio far less often than it says, and the less often the more skins there are. `fitWeighted` tells one that holds.
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
  return {
    rungs: sizes.length,
    intercept,
    slope,
    ratio: Math.exp(slope),
    geometricMeanRatio: (last.lengthMm / first.lengthMm) ** (1 / (last.step - first.step)),
    rSquared: fit.rSquared,
    residualStandardDeviation: fit.residualStandardDeviation,
  };
}
