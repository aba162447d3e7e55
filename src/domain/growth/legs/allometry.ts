import { z } from 'zod';
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
 * squares of the logarithms, 95 % interval with Student's t on n - 2 degrees of freedom. Regenerated and missing legs are out of
 * the sizes already.
 *
 * @returns null with fewer than three skins that show both, or where their carapaces are all of one size.
 */
export function fitAllometry<One extends Leg>(skins: readonly Pick<SkinSizes, 'carapaceLengthMm' | One>[], leg: One): LegAllometry | null {
  const pairs = skins.flatMap(({ carapaceLengthMm, [leg]: size }) =>
    carapaceLengthMm && size ? [{ carapace: Math.log(carapaceLengthMm.value), leg: Math.log(size.value) }] : [],
  );
  const carapaces = pairs.map(({ carapace }) => carapace);
  if (pairs.length < 3 || Math.max(...carapaces) - Math.min(...carapaces) < Math.log(LEAST_RANGE)) return null;
  const fit = leastSquares(
    carapaces.map((carapace) => [1, carapace]),
    pairs.map((pair) => pair.leg),
  );
  const [intercept = 0, exponent = 0] = fit.coefficients;
  const reach = studentTQuantile(0.975, fit.degreesOfFreedom) * (fit.standardErrors[1] ?? 0);
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

/** Exponents closer to 1 than this are 1 but for rounding. */
const ROUNDING = 1e-9;
