import { z } from 'zod';
import { medianOf } from '../../numerics/median.ts';
import { FEWEST_RUNGS_FOR_FIT, type SizeAtStep } from '../growthFit.ts';

/** The line that one wrong size cannot pull away. */
export const RobustFit = z
  .object({ intercept: z.number(), slope: z.number(), ratio: z.number().describe('exp(b), later over earlier') })
  .meta({ id: 'RobustFit' });
export type RobustFit = z.infer<typeof RobustFit>;

/**
 * Fits `ln L = a + b n` by the median of the slopes between all pairs (Theil H 1950, Proc. Kon. Ned. Akad. Wet. A 53:386; Sen PK
 * 1968, J. Am. Stat. Assoc. 63:1379-1389), the intercept by the median of ln L - b n. Stays put while fewer than 29 % of the
 * sizes are wrong.
 *
 * @param sizes each with a step of its own.
 * @returns null with fewer than three sizes.
 */
export function fitRobust(sizes: readonly SizeAtStep[]): RobustFit | null {
  if (sizes.length < FEWEST_RUNGS_FOR_FIT) return null;
  const points = sizes.map(({ step, lengthMm }) => ({ step, log: Math.log(lengthMm) }));
  const slope = medianOf(
    points.flatMap((one, index) => points.slice(index + 1).map((other) => (other.log - one.log) / (other.step - one.step))),
  );
  const intercept = medianOf(points.map(({ step, log }) => log - slope * step));
  return { intercept, slope, ratio: Math.exp(slope) };
}
