import { z } from 'zod';
import { studentTQuantile } from '../numerics/studentT.ts';

const Interval = z.object({ low: z.number(), high: z.number() });
export type Interval = z.infer<typeof Interval>;

/** How far two observers, or two ways to measure, may differ on one thing. In the unit of the readings. */
export const Agreement = z
  .object({
    bias: z.number().describe('Mean of first minus second'),
    standardDeviation: z.number().min(0),
    limits: Interval.describe('95 of 100 differences lie between these, if they are normal'),
    biasInterval: Interval.describe('95 % confidence'),
    lowerLimitInterval: Interval.describe('95 % confidence'),
    upperLimitInterval: Interval.describe('95 % confidence'),
    pairs: z.int().min(3),
  })
  .meta({ id: 'Agreement' });
export type Agreement = z.infer<typeof Agreement>;

const NORMAL_95 = 1.959963984540054;

/**
 * Bias and limits of agreement (Bland & Altman 1986, Lancet 327:307). The standard error of a limit is about sqrt(3 s^2 / n).
 *
 * @param pairs the same thing read by the first and by the second.
 * @returns null for fewer than three pairs.
 */
export function limitsOfAgreement(pairs: readonly (readonly [number, number])[]): Agreement | null {
  const count = pairs.length;
  if (count < 3) return null;
  const differences = pairs.map(([first, second]) => first - second);
  const bias = differences.reduce((sum, value) => sum + value, 0) / count;
  const standardDeviation = Math.sqrt(differences.reduce((sum, value) => sum + (value - bias) ** 2, 0) / (count - 1));
  const limits = about(bias, NORMAL_95 * standardDeviation);
  const t = studentTQuantile(0.975, count - 1);
  const limitHalf = t * Math.sqrt(3 / count) * standardDeviation;
  return {
    bias,
    standardDeviation,
    limits,
    biasInterval: about(bias, (t * standardDeviation) / Math.sqrt(count)),
    lowerLimitInterval: about(limits.low, limitHalf),
    upperLimitInterval: about(limits.high, limitHalf),
    pairs: count,
  };
}

function about(middle: number, half: number): Interval {
  return { low: middle - half, high: middle + half };
}
