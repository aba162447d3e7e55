import { z } from 'zod';
import type { Estimate } from '../../measuring/quantity.ts';
import { leastSquares } from '../../numerics/leastSquares.ts';
import { studentTQuantile } from '../../numerics/studentT.ts';
import type { SkinSizes } from '../skinSizes.ts';

/** How a leg grows against the carapace: ln leg = a + k ln carapace. */
export const LegAllometry = z
  .object({
    skins: z.int().min(3),
    intercept: z.number(),
    exponent: z.number().describe('k; 1 where leg and carapace grow alike'),
    exponentLow95: z.number(),
    exponentHigh95: z.number(),
    rSquared: z.number(),
    growth: z.enum(['alike', 'leg-faster', 'leg-slower']).describe('alike where 1 lies within the interval'),
  })
  .meta({ id: 'LegAllometry' });
export type LegAllometry = z.infer<typeof LegAllometry>;

type Leg = 'legFirstMm' | 'legFourthMm';

/** Carapaces closer together than this, largest over smallest, say nothing about an exponent. */
const LEAST_RANGE = 1.02;

/**
 * Fits the allometric relation leg = e^a carapace^k (Huxley JS, Teissier G 1936, Nature 137:780; from memory) by ordinary least
 * squares of the logarithms, 95 % interval with Student's t on n - 2 degrees of freedom, and never narrower than the readings leave it:
 * u^2(k) = sum ((x_i - mean) / Sxx)^2 (u^2(y_i) + k^2 u^2(x_i)), JCGM 100:2008, 5.1.2, the errors of leg and carapace taken as apart.
 * What they share, the scale of their photo, would make it better than stated. Regenerated and missing legs are out of the sizes already.
 *
 * @returns null with fewer than three skins that show both, or where their carapaces are all of one size.
 */
export function fitAllometry<One extends Leg>(skins: readonly Pick<SkinSizes, 'carapaceLengthMm' | One>[], leg: One): LegAllometry | null {
  const pairs = skins.flatMap(({ carapaceLengthMm, [leg]: size }) =>
    carapaceLengthMm && size
      ? [
          {
            carapace: Math.log(carapaceLengthMm.value),
            leg: Math.log(size.value),
            ofCarapace: relative(carapaceLengthMm),
            ofLeg: relative(size),
          },
        ]
      : [],
  );
  const carapaces = pairs.map(({ carapace }) => carapace);
  if (pairs.length < 3 || Math.max(...carapaces) - Math.min(...carapaces) < Math.log(LEAST_RANGE)) return null;
  const fit = leastSquares(
    carapaces.map((carapace) => [1, carapace]),
    pairs.map((pair) => pair.leg),
  );
  const [intercept = 0, exponent = 0] = fit.coefficients;
  const middle = carapaces.reduce((sum, carapace) => sum + carapace, 0) / carapaces.length;
  const squares = carapaces.reduce((sum, carapace) => sum + (carapace - middle) ** 2, 0);
  const byReadings = Math.hypot(
    ...pairs.map(({ carapace, ofCarapace, ofLeg }) => ((carapace - middle) / squares) * Math.hypot(ofLeg, exponent * ofCarapace)),
  );
  const reach = Math.max(studentTQuantile(0.975, fit.degreesOfFreedom) * (fit.standardErrors[1] ?? 0), NORMAL_95 * byReadings);
  const low = exponent - reach;
  const high = exponent + reach;
  return {
    skins: pairs.length,
    intercept,
    exponent,
    exponentLow95: low,
    exponentHigh95: high,
    rSquared: fit.rSquared,
    growth: low > 1 + ROUNDING ? 'leg-faster' : high < 1 - ROUNDING ? 'leg-slower' : 'alike',
  };
}

function relative({ value, standardUncertainty }: Estimate): number {
  return standardUncertainty / value;
}

/** Half width of the middle 95 % of a normal variable, in standard deviations. */
const NORMAL_95 = 1.96;
/** Exponents closer to 1 than this are 1 but for rounding. */
const ROUNDING = 1e-9;
