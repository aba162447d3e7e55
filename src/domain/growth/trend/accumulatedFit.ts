import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { leastSquares } from '../../numerics/leastSquares.ts';
import type { MeasuredStep } from '../measuredStep.ts';
import { type Course, courseOf, powersOf, scatterLeftIn, scatterVarianceOf } from './scatter.ts';

/** The course of ln L along the instars, `a + b d (+ c d^2)` with d instars since the first size, where growth's scatter adds up. */
export interface AccumulatedFit {
  /** a, b and, of a parabola, c. */
  readonly coefficients: readonly number[];
  /** Of `coefficients`. */
  readonly standardErrors: readonly number[];
  readonly degreesOfFreedom: number;
  /** s^2: variance of ln r of single molts that the readings do not explain. */
  readonly scatterVariance: number;
  readonly course: Course;
  readonly told: Solution;
  /** As if the readings were exact and all scatter growth's. */
  readonly cautious: Solution;
}

interface Solution {
  readonly coefficients: readonly number[];
  /** (X' V^-1 X)^-1. */
  readonly covariance: Matrix;
  /** V^-1. */
  readonly precision: Matrix;
  readonly scatterVariance: number;
}

/** ln L of one instar as a fit foretells it. */
export interface LogSizeAt {
  readonly middle: number;
  /** Of `middle` about what is expected there, given the true sizes on both sides. */
  readonly meanVariance: number;
  /** Of a skin there about `middle`, without its reading. */
  readonly variance: number;
}

/**
 * Generalized least squares of ln L on the instar. Each molt multiplies the size by a ratio of its own and the next starts from there, so
 * what one molt grew too much stays in all sizes after it: V_ij = s^2 min(d_i, d_j) + u_i^2 [i = j], u_i = u(L_i) / L_i (Aitken AC
 * 1935, Proc. R. Soc. Edinb. 55:42-48, from memory; the covariance is that of a random walk). With exact readings it is the regression
 * of the single ln r on the instar; where the readings alone scatter, the weighted regression of ln L.
 *
 * Few skins may by chance scatter less than their readings do, and s^2 would be called zero. So every standard error is at least
 * the one that counts all scatter of ln r as growth's (`scatterLeftIn`): plain Student's t on the single ln r.
 *
 * @param sizes in rising order of step, each with a step of its own; more of them than coefficients.
 * @param degree 1 for one ratio throughout, 2 for one that changes evenly.
 * @returns null where the uncertainties leave no numbers to reckon with.
 */
export function fitAccumulated(sizes: readonly MeasuredStep[], degree: 1 | 2): AccumulatedFit | null {
  const course = courseOf(sizes, degree);
  const scatterVariance = scatterVarianceOf(course);
  const told = solve(course, course.readings, scatterVariance);
  if (!told) return null;
  const exact = course.readings.map(() => EXACT_READING);
  const cautious = solve(course, exact, Math.max(EXACT_READING, scatterLeftIn(course, told.coefficients, scatterVariance)));
  if (!cautious) return null;
  return {
    coefficients: told.coefficients,
    standardErrors: told.coefficients.map((_, i) => Math.sqrt(Math.max(told.covariance.get(i, i), cautious.covariance.get(i, i)))),
    degreesOfFreedom: course.degreesOfFreedom,
    scatterVariance,
    course,
    told,
    cautious,
  };
}

/** A matrix cannot be turned round where a reading has no variance at all: 1e-6 of the length, far below any. */
const EXACT_READING = 1e-12;

function solve({ since, logs, degree }: Course, readings: readonly number[], scatterVariance: number): Solution | null {
  const rowOf = (d: number, i: number) =>
    since.map((e, j) => scatterVariance * Math.min(d, e) + (i === j ? Math.max(EXACT_READING, readings[i] ?? 0) : 0));
  const cholesky = new CholeskyDecomposition(new Matrix(since.map(rowOf)));
  if (!cholesky.isPositiveDefinite()) return null;
  const whitening = inverse(cholesky.lowerTriangularMatrix);
  const rows = whitening.mmul(new Matrix(since.map((d) => powersOf(d, degree))));
  const observed = whitening.mmul(Matrix.columnVector([...logs]));
  if (![...rows.to1DArray(), ...observed.to1DArray()].every(Number.isFinite)) return null;
  const { coefficients, cofactors } = leastSquares(rows.to2DArray(), observed.to1DArray());
  const covariance = new Matrix(cofactors.map((row) => [...row]));
  return { coefficients, covariance, precision: whitening.transpose().mmul(whitening), scatterVariance };
}

/**
 * Best linear unbiased prediction of ln L from all sizes at once (Goldberger AS 1962, J. Am. Stat. Assoc. 57:369-375; from memory):
 * x'b + c'V^-1 e, with c the covariance of the size there with those measured and e their residuals. From the last size on it goes by the
 * fitted ratio, between two it bridges them.
 *
 * @param step at or after the first size.
 */
export function predictAccumulated({ course, told, cautious }: AccumulatedFit, step: number): LogSizeAt {
  const d = step - course.firstStep;
  const [one, other] = [predictWith(told, course, d), predictWith(cautious, course, d)];
  return {
    middle: one.middle,
    variance: Math.max(one.variance, other.variance),
    meanVariance: Math.max(one.meanVariance, other.meanVariance),
  };
}

function predictWith(
  { coefficients, covariance, precision, scatterVariance }: Solution,
  { since, logs, degree }: Course,
  d: number,
): LogSizeAt {
  const design = new Matrix(since.map((e) => powersOf(e, degree)));
  const row = Matrix.rowVector(powersOf(d, degree));
  const shared = Matrix.columnVector(since.map((e) => scatterVariance * Math.min(d, e)));
  const weights = precision.mmul(shared);
  const line = Matrix.columnVector([...coefficients]);
  const residuals = Matrix.sub(Matrix.columnVector([...logs]), design.mmul(line));
  const lacking = Matrix.sub(row, weights.transpose().mmul(design));
  const ofState = scatterVariance * d - dot(shared, weights);
  const variance = Math.max(0, ofState + dot(lacking.transpose(), covariance.mmul(lacking.transpose())));
  return {
    middle: dot(row.transpose(), line) + dot(weights, residuals),
    variance,
    meanVariance: Math.max(0, variance - scatterVariance * moltsOpen(d, since)),
  };
}

function dot(a: Matrix, b: Matrix): number {
  return a.transpose().mmul(b).get(0, 0);
}

/** Variance of a random walk of unit steps at d, given where it was at the places nearest to it. */
function moltsOpen(d: number, since: readonly number[]): number {
  const before = since.findLast((e) => e <= d) ?? 0;
  const after = since.find((e) => e >= d);
  if (after === undefined) return d - before;
  return after === before ? 0 : ((d - before) * (after - d)) / (after - before);
}
