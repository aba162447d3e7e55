import { z } from 'zod';
import { studentTTwoSided } from '../../numerics/studentT.ts';
import type { MeasuredStep } from '../measuredStep.ts';
import { type AccumulatedFit, fitAccumulated } from './accumulatedFit.ts';

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

/**
 * Tests the quadratic term of `ln L = a + b n + c n^2`, fitted by `fitAccumulated`, by t = c / s_c on n - 3 degrees of freedom: what
 * scatter adds up to along the row looks like a bend, and must not count as one. Proportional increases tend to decline with size
 * (Hutchinson JMC et al. 1997, Phil. Trans. R. Soc. B 352:113-138; Gaines & Campbell 1935 fitted a parabola already).
 *
 * @param sizes in rising order of step.
 * @returns null with fewer than four sizes.
 */
export function testCurvature(sizes: readonly MeasuredStep[]): Curvature | null {
  const fit = fitParabola(sizes);
  if (!fit) return null;
  const [, , quadratic = 0] = fit.coefficients;
  const [, , standardError = 0] = fit.standardErrors;
  const probability = studentTTwoSided(quadratic / standardError, fit.degreesOfFreedom);
  return {
    quadratic,
    standardError,
    ratioChangePercent: 100 * Math.expm1(2 * quadratic),
    probability,
    bends: probability < SIGNIFICANCE,
  };
}

/** ln L on step and its square; null with fewer than four sizes. */
export function fitParabola(sizes: readonly MeasuredStep[]): AccumulatedFit | null {
  return sizes.length < FEWEST_RUNGS_FOR_CURVE ? null : fitAccumulated(sizes, 2);
}
