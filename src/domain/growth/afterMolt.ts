import { z } from 'zod';
import type { Estimate } from '../measuring/quantity.ts';
import { studentTQuantile } from '../numerics/studentT.ts';
import { growthSteps, type MeasuredStep } from './measuredStep.ts';
import { believeGrowth, type KinLogRatios } from './missed/growthBelief.ts';

/** A size of the animal after its last molt, foretold from the skin of that molt; 95 %. */
export const SizeAfterMolt = z
  .object({ middleMm: z.number().positive(), low95Mm: z.number().positive(), high95Mm: z.number().positive() })
  .meta({ id: 'SizeAfterMolt' });
export type SizeAfterMolt = z.infer<typeof SizeAfterMolt>;

/** ln r of the molt after the last measured skin. */
export interface NextLogRatio {
  readonly middle: number;
  readonly standardDeviation: number;
  readonly degreesOfFreedom: number;
}

/** From the animal's own steps, its kin and its family; the middle of the growth expected at the molt that shed the last skin. */
export function nextLogRatio(sizes: readonly MeasuredStep[], kin: KinLogRatios = []): NextLogRatio {
  const belief = believeGrowth(growthSteps(sizes), kin);
  const along = (sizes.at(-1)?.step ?? 0) + 0.5 - belief.aroundStep;
  const known = sizes.length > 1 ? along : 0;
  const variance = belief.levelVariance + 2 * known * belief.covariance + known ** 2 * belief.trendVariance + belief.scatter ** 2;
  return {
    middle: belief.level + belief.trend * known,
    standardDeviation: Math.sqrt(variance),
    degreesOfFreedom: belief.degreesOfFreedom,
  };
}

/**
 * ln S' = ln S + k ln r: a leg span, or any size, grows with the carapace to the power k. Interval by Student's t over
 * (u(S) / S)^2 + k^2 s^2(ln r) (JCGM 100:2008, 5.1.2 and G.4). A span taken from a dry, curled skin is biased low, and so then is this.
 *
 * @returns null where the interval is too wide for a number.
 * @param size on the skin of the last molt, above zero.
 * @param exponent k of the allometry; 1 where it is not known.
 */
export function sizeAfterMolt(size: Estimate, growth: NextLogRatio, exponent = 1): SizeAfterMolt | null {
  const middle = Math.log(size.value) + exponent * growth.middle;
  const deviation = Math.hypot(size.standardUncertainty / size.value, exponent * growth.standardDeviation);
  const reach = studentTQuantile(0.975, growth.degreesOfFreedom) * deviation;
  const after = { middleMm: Math.exp(middle), low95Mm: Math.exp(middle - reach), high95Mm: Math.exp(middle + reach) };
  return after.low95Mm > 0 && Number.isFinite(after.high95Mm) ? after : null;
}
