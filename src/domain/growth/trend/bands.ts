import { z } from 'zod';
import { type LinearFit, leastSquares } from '../../numerics/leastSquares.ts';
import { studentTQuantile } from '../../numerics/studentT.ts';
import { FEWEST_RUNGS_FOR_FIT, type SizeAtStep } from '../growthFit.ts';
import { fitParabola, testCurvature } from './curvature.ts';

/** What the fit says of one instar: where its mean lies, and where one skin of it would lie; both 95 %. */
export const BandAtStep = z
  .object({
    step: z.number(),
    middleMm: z.number().positive(),
    meanLow95Mm: z.number().positive(),
    meanHigh95Mm: z.number().positive(),
    oneLow95Mm: z.number().positive(),
    oneHigh95Mm: z.number().positive(),
  })
  .meta({ id: 'BandAtStep' });
export type BandAtStep = z.infer<typeof BandAtStep>;

export const Bands = z
  .object({
    model: z.enum(['line', 'parabola']).describe('The parabola where its quadratic term is significant at 5 %'),
    at: z.array(BandAtStep).describe('At every instar from the first measured one to the one after the last'),
    next: BandAtStep.nullable().describe('The instar after the last measured one: prediction of the next rung'),
  })
  .meta({ id: 'Bands' });
export type Bands = z.infer<typeof Bands>;

/**
 * Bands of `ln L` on step, brought back to millimeters: the mean within x'b -+ t sqrt(x' C x), a single skin within
 * x'b -+ t sqrt(x' C x + s^2), with C the covariance of the coefficients, s the residual deviation and Student's t on the
 * residual degrees of freedom (Draper NR, Smith H, Applied Regression Analysis, ch. 1 and 5; from memory).
 *
 * @param sizes in rising order of step.
 * @returns null with fewer than three sizes.
 */
export function bandsOf(sizes: readonly SizeAtStep[]): Bands | null {
  const first = sizes[0];
  const last = sizes.at(-1);
  if (!first || !last || sizes.length < FEWEST_RUNGS_FOR_FIT) return null;
  const parabola = testCurvature(sizes)?.bends ? fitParabola(sizes) : null;
  const fit = parabola ?? fitLine(sizes);
  const rowAt = (step: number) => (parabola ? [1, step, step * step] : [1, step]);
  const steps = Array.from({ length: last.step - first.step + 2 }, (_, index) => first.step + index);
  const at = steps.map((step) => bandAt(fit, step, rowAt(step))).filter((band) => band !== null);
  return { model: parabola ? 'parabola' : 'line', at, next: at.find(({ step }) => step === last.step + 1) ?? null };
}

function fitLine(sizes: readonly SizeAtStep[]): LinearFit {
  return leastSquares(
    sizes.map(({ step }) => [1, step]),
    sizes.map(({ lengthMm }) => Math.log(lengthMm)),
  );
}

/** Null where the interval is too wide for a number. */
function bandAt(fit: LinearFit, step: number, row: readonly number[]): BandAtStep | null {
  const middle = row.reduce((sum, entry, i) => sum + entry * (fit.coefficients[i] ?? 0), 0);
  const meanVariance = row.reduce((sum, a, i) => sum + a * row.reduce((inner, b, j) => inner + b * (fit.covariance[i]?.[j] ?? 0), 0), 0);
  const t = studentTQuantile(0.975, fit.degreesOfFreedom);
  const mean = t * Math.sqrt(Math.max(0, meanVariance));
  const one = t * Math.sqrt(Math.max(0, meanVariance) + fit.residualStandardDeviation ** 2);
  const band = {
    step,
    middleMm: Math.exp(middle),
    meanLow95Mm: Math.exp(middle - mean),
    meanHigh95Mm: Math.exp(middle + mean),
    oneLow95Mm: Math.exp(middle - one),
    oneHigh95Mm: Math.exp(middle + one),
  };
  return Number.isFinite(band.oneHigh95Mm) && band.oneLow95Mm > 0 ? band : null;
}
