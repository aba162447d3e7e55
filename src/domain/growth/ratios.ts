import { z } from 'zod';
import { Estimate, estimateFrom } from '../measuring/quantity.ts';
import { type GrowthStep, growthSteps, isOneMolt, type MeasuredStep } from './measuredStep.ts';

/**
 * Linear growth per molt if each instar doubles the weight, 2^(1/3) = 1.2599 (Przibram H, Megusar F 1912, Arch. EntwMech. Org.
 * 34:680-741; from memory). A yardstick, no law: growth is seldom isometric.
 */
export const PRZIBRAM_RATIO = Math.cbrt(2);

export const StepwiseRatio = z
  .object({
    earlierMoltId: z.string(),
    laterMoltId: z.string(),
    instars: z.int().min(1).describe('1 where the two skins followed each other'),
    perInstar: Estimate.describe('(later / earlier)^(1 / instars); the stepwise ratio itself where instars is 1'),
  })
  .meta({ id: 'StepwiseRatio' });
export type StepwiseRatio = z.infer<typeof StepwiseRatio>;

/** Three ways to say how fast the animal grows, each by its name, later over earlier; uncertainties from the readings alone. */
export const GrowthRatios = z
  .object({
    stepwise: z.array(StepwiseRatio),
    arithmeticMean: z.number().nullable().describe('Of the ratios of skins that followed each other, so of the steps beside a gap none'),
    spread: z.number().nullable().describe('Standard deviation (n - 1) of these ratios; null with fewer than two'),
    geometricMean: Estimate.nullable().describe('(last / first)^(1 / instars between)'),
    regression: Estimate.nullable().describe('exp(b) of ln L = a + b n by least squares; from three sizes up'),
    przibram: z.number(),
  })
  .meta({ id: 'GrowthRatios' });
export type GrowthRatios = z.infer<typeof GrowthRatios>;

/** The ratios of a row of sizes in rising order of step (Dyar HG 1890, Psyche 5:420-422, who wrote them the other way up). */
export function ratiosOf(sizes: readonly MeasuredStep[]): GrowthRatios {
  const steps = growthSteps(sizes);
  const single = steps.filter(isOneMolt).map(({ logRatio }) => Math.exp(logRatio));
  const mean = single.length > 0 ? single.reduce((sum, ratio) => sum + ratio, 0) / single.length : null;
  const squares = mean === null ? 0 : single.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0);
  return {
    stepwise: steps.map((step) => ({
      earlierMoltId: step.earlier.moltId,
      laterMoltId: step.later.moltId,
      instars: step.instars,
      perInstar: perInstar(step),
    })),
    arithmeticMean: mean,
    spread: single.length < 2 ? null : Math.sqrt(squares / (single.length - 1)),
    geometricMean: geometricMeanRatio(sizes),
    regression: regressionRatio(sizes),
    przibram: PRZIBRAM_RATIO,
  };
}

/** The d-th root divides the relative uncertainty by d (JCGM 100:2008, 5.1.6). */
function perInstar({ logRatio, uncertainty, instars }: GrowthStep): Estimate {
  const value = Math.exp(logRatio / instars);
  return estimateFrom(value, (value * uncertainty) / instars);
}

/** (L_k / L_1)^(1 / (k - 1)): the end points alone decide it. */
function geometricMeanRatio(sizes: readonly MeasuredStep[]): Estimate | null {
  const [first] = sizes;
  const last = sizes.at(-1);
  if (!first || !last || first === last) return null;
  const [whole] = growthSteps([first, last]);
  return whole ? perInstar(whole) : null;
}

/** exp(b), b = sum of c_i ln L_i with c_i = (n_i - mean n) / S_nn, so u^2(b) = sum of (c_i u_i / L_i)^2 (JCGM 100:2008, 5.1.2). */
function regressionRatio(sizes: readonly MeasuredStep[]): Estimate | null {
  if (sizes.length < 3) return null;
  const mean = sizes.reduce((sum, { step }) => sum + step, 0) / sizes.length;
  const square = sizes.reduce((sum, { step }) => sum + (step - mean) ** 2, 0);
  const shares = sizes.map((size) => ({ ...size, share: (size.step - mean) / square }));
  const slope = shares.reduce((sum, { share, lengthMm }) => sum + share * Math.log(lengthMm), 0);
  const uncertainty = Math.hypot(...shares.map(({ share, lengthMm, uncertaintyMm }) => (share * uncertaintyMm) / lengthMm));
  return estimateFrom(Math.exp(slope), Math.exp(slope) * uncertainty);
}
