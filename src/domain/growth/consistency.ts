import { LuDecomposition, Matrix } from 'ml-matrix';
import { z } from 'zod';
import type { BudgetSource } from '../measuring/quantity.ts';
import { chiSquareTail } from '../numerics/chiSquare.ts';
import { errorCorrelationOf, type MeasuredLength } from './measuredLength.ts';

/** Whether several readings of one length differ by no more than their uncertainties allow. */
export const ReadingConsistency = z
  .object({
    readings: z.int().min(2),
    chiSquared: z.number().min(0),
    birgeRatio: z.number().min(0).describe('sqrt(chi^2 / (n - 1)); about 1 where readings scatter as their uncertainties say'),
    probability: z.number().min(0).max(1).describe('Of a chi^2 as large if the uncertainties are right'),
    agree: z.boolean().describe('false below 5 %: something else differs, such as a landmark or a scale'),
  })
  .meta({ id: 'ReadingConsistency' });
export type ReadingConsistency = z.infer<typeof ReadingConsistency>;

const SIGNIFICANCE = 0.05;

/**
 * chi^2 = (x - m)' V^-1 (x - m) about the generalized mean m, with V the covariance of what can differ between the readings:
 * an error that all share, such as the assumed height of the carapace, cannot set them apart. Two photos may show two scale objects,
 * whose errors can: taken as one object's, such a difference would be blamed on the points. Birge ratio sqrt(chi^2 / (n - 1)) (Birge RT
 * 1932, Phys. Rev. 40:207; from memory).
 *
 * @returns null for fewer than two readings, and where some have no error of their own to compare their difference with.
 */
export function consistencyOf(lengths: readonly MeasuredLength[]): ReadingConsistency | null {
  const readings = lengths.length;
  if (readings < 2) return null;
  const covariance = new LuDecomposition(new Matrix(lengths.map((a, i) => lengths.map((b, j) => covarianceApart(a, b, i === j)))));
  if (covariance.isSingular()) return null;
  const ones = Matrix.ones(readings, 1);
  const values = Matrix.columnVector(lengths.map(({ valueMm }) => valueMm));
  const weighed = covariance.solve(ones);
  const mean = weighed.transpose().mmul(values).get(0, 0) / weighed.transpose().mmul(ones).get(0, 0);
  const apart = Matrix.sub(values, Matrix.mul(ones, mean));
  const chiSquared = Math.max(0, apart.transpose().mmul(covariance.solve(apart)).get(0, 0));
  if (!Number.isFinite(chiSquared)) return null;
  const probability = chiSquareTail(chiSquared, readings - 1);
  return { readings, chiSquared, birgeRatio: Math.sqrt(chiSquared / (readings - 1)), probability, agree: probability >= SIGNIFICANCE };
}

/** Of one animal, whichever photo. */
const SHARED_BY_ALL: readonly (BudgetSource | 'rest')[] = ['height'];

function covarianceApart(a: MeasuredLength, b: MeasuredLength, same: boolean): number {
  let sum = 0;
  for (const source of Object.keys(a.parts) as (BudgetSource | 'rest')[]) {
    if (SHARED_BY_ALL.includes(source)) continue;
    sum += (same ? 1 : correlationApart(source, a, b)) * (a.parts[source] ?? 0) * (b.parts[source] ?? 0);
  }
  return sum;
}

function correlationApart(source: BudgetSource | 'rest', a: MeasuredLength, b: MeasuredLength): 0 | 1 {
  if (source === 'scale-object') return a.calibratedBy === b.calibratedBy ? 1 : 0;
  return errorCorrelationOf(source, a, b);
}
