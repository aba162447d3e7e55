import { z } from 'zod';
import { type LinearFit, leastSquares } from '../../numerics/leastSquares.ts';
import { studentTTwoSided } from '../../numerics/studentT.ts';
import type { SizeAtStep } from '../growthFit.ts';

/** Whether ln L bends: below zero the ratios fall from molt to molt. */
export const Curvature = z
  .object({
    quadratic: z.number().describe('c in ln L = a + b n + c n^2'),
    standardError: z.number().min(0),
    ratioChangePercent: z.number().describe('100 (exp(2 c) - 1): by how much each ratio differs from the one before, in percent'),
    probability: z.number().min(0).max(1).describe('Two-sided, of a |t| as large if growth kept to one ratio'),
    bends: z.boolean(),
  })
  .meta({ id: 'Curvature' });
export type Curvature = z.infer<typeof Curvature>;

/** With four sizes the parabola leaves one degree of freedom. */
export const FEWEST_RUNGS_FOR_CURVE = 4;
const SIGNIFICANCE = 0.05;
/** Residuals of ln L below this are rounding, and a t of them would be noise over noise. */
const ROUNDING = 1e-12;

/**
 * Tests the quadratic term of `ln L = a + b n + c n^2` by t = c / s_c on n - 3 degrees of freedom. Proportional increases tend
 * to decline with size (Hutchinson JMC et al. 1997, Phil. Trans. R. Soc. B 352:113-138; Gaines & Campbell 1935 fitted a
 * parabola already).
 *
 * @returns null with fewer than four sizes, or when the sizes lie on the curve exactly.
 */
export function testCurvature(sizes: readonly SizeAtStep[]): Curvature | null {
  const fit = fitParabola(sizes);
  const [, , quadratic = 0] = fit?.coefficients ?? [];
  const standardError = fit?.standardErrors[2] ?? 0;
  if (!fit || fit.residualStandardDeviation < ROUNDING || standardError === 0) return null;
  const probability = studentTTwoSided(quadratic / standardError, fit.degreesOfFreedom);
  return {
    quadratic,
    standardError,
    ratioChangePercent: 100 * Math.expm1(2 * quadratic),
    probability,
    bends: probability < SIGNIFICANCE,
  };
}

/** Least squares of ln L on step and its square; null with fewer than four sizes. */
export function fitParabola(sizes: readonly SizeAtStep[]): LinearFit | null {
  if (sizes.length < FEWEST_RUNGS_FOR_CURVE) return null;
  return leastSquares(
    sizes.map(({ step }) => [1, step, step * step]),
    sizes.map(({ lengthMm }) => Math.log(lengthMm)),
  );
}
