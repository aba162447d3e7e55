import { z } from 'zod';

/** How well repeated readings of the same things agree, in the unit of the readings. */
export const TechnicalError = z
  .object({
    technicalError: z.number().min(0).describe('Technical error of measurement: the pooled standard deviation of one reading'),
    relativePercent: z.number().min(0).describe('Of the mean of all readings'),
    reliability: z
      .number()
      .nullable()
      .describe('Share of the variance of all readings that is not error of measurement; null when all readings are equal'),
    mean: z.number(),
    degreesOfFreedom: z.int().positive(),
  })
  .meta({ id: 'TechnicalError' });
export type TechnicalError = z.infer<typeof TechnicalError>;

/**
 * Technical error of measurement (Dahlberg 1940) with reliability, for any number of readings of each thing: Ulijaszek & Kerr
 * 1999, British Journal of Nutrition 82:165. Readings by one observer give the error within, one reading each by several
 * observers that between observers.
 *
 * @param readings one row per thing measured; rows of fewer than two readings say nothing and are left out.
 * @returns null when no thing was read twice.
 */
export function technicalErrorOf(readings: readonly (readonly number[])[]): TechnicalError | null {
  const repeated = readings.filter((row) => row.length > 1);
  const all = repeated.flat();
  const degreesOfFreedom = all.length - repeated.length;
  if (degreesOfFreedom === 0) return null;
  const variance = repeated.reduce((sum, row) => sum + sumOfSquaresAbout(row, meanOf(row)), 0) / degreesOfFreedom;
  const mean = meanOf(all);
  const total = sumOfSquaresAbout(all, mean) / (all.length - 1);
  return {
    technicalError: Math.sqrt(variance),
    relativePercent: (100 * Math.sqrt(variance)) / Math.abs(mean),
    reliability: total > 0 ? 1 - variance / total : null,
    mean,
    degreesOfFreedom,
  };
}

/** Two single readings that differ by less than this may be of equal things: 1.96 sqrt 2 times the error, 95 % (normal errors). */
export function smallestDetectableDifference(technicalError: number): number {
  return 1.96 * Math.SQRT2 * technicalError;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function sumOfSquaresAbout(values: readonly number[], mean: number): number {
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}
