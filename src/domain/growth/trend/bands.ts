import { COVERAGE_FACTOR } from '../../measuring/quantity.ts';
import { studentTQuantile } from '../../numerics/studentT.ts';
import { FEWEST_RUNGS_FOR_FIT } from '../growthFit.ts';
import type { MeasuredStep } from '../measuredStep.ts';
import { fitAccumulated, predictAccumulated } from './accumulatedFit.ts';
import { fitParabola, testCurvature } from './curvature.ts';

/** What the skins say of one instar: where its expected size lies, and where one skin of it would lie; both 95 %. */
export interface BandAtStep {
  readonly step: number;
  readonly middleMm: number;
  readonly meanLow95Mm: number;
  readonly meanHigh95Mm: number;
  readonly oneLow95Mm: number;
  readonly oneHigh95Mm: number;
}

export interface Bands {
  /** The parabola where its quadratic term is significant at 5 %. */
  readonly model: 'line' | 'parabola';
  /** At every instar from the first measured one to the one after the last. */
  readonly at: readonly BandAtStep[];
  /** Of `at`, the instar after the last measured one: prediction of the next rung. */
  readonly next: BandAtStep | null;
}

/**
 * Bands of ln L by instar, brought back to millimeters. At a measured skin its own reading: the mean within U, another reading of it
 * within sqrt(2) U. In a gap and after the last skin the prediction of `predictAccumulated` with Student's t on the residual degrees of
 * freedom: the mean holds the size expected there, one skin adds the scatter of growth on the way and the reading, as good as these on
 * the whole. So the bands are narrow where a skin was measured and open from there.
 *
 * @param sizes in rising order of step.
 * @returns null with fewer than three sizes.
 */
export function bandsOf(sizes: readonly MeasuredStep[]): Bands | null {
  const first = sizes[0];
  const last = sizes.at(-1);
  if (!first || !last || sizes.length < FEWEST_RUNGS_FOR_FIT) return null;
  const parabola = testCurvature(sizes)?.bends ? fitParabola(sizes) : null;
  const fit = parabola ?? fitAccumulated(sizes, 1);
  if (!fit) return null;
  const t = studentTQuantile(0.975, fit.degreesOfFreedom);
  const reading = sizes.reduce((sum, { lengthMm, uncertaintyMm }) => sum + (uncertaintyMm / lengthMm) ** 2, 0) / sizes.length;
  const bandAtStep = (step: number) => {
    const measured = sizes.find((size) => size.step === step);
    if (measured) {
      const own = (COVERAGE_FACTOR * measured.uncertaintyMm) / measured.lengthMm;
      return bandAt(step, { middle: Math.log(measured.lengthMm), mean: own, one: Math.SQRT2 * own });
    }
    const { middle, meanVariance, variance } = predictAccumulated(fit, step);
    return bandAt(step, { middle, mean: t * Math.sqrt(meanVariance), one: t * Math.sqrt(variance + reading) });
  };
  const steps = Array.from({ length: last.step - first.step + 2 }, (_, index) => first.step + index);
  const at = steps.map(bandAtStep).filter((band) => band !== null);
  return { model: parabola ? 'parabola' : 'line', at, next: at.find(({ step }) => step === last.step + 1) ?? null };
}

/** Null where the interval is too wide for a number. */
function bandAt(step: number, { middle, mean, one }: { middle: number; mean: number; one: number }): BandAtStep | null {
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
