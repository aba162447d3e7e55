import { EigenvalueDecomposition, inverse, Matrix } from 'ml-matrix';
import { type Ellipse, ellipseOf, nearestAngle, withinHalfTurn } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { solveSymmetric } from '../../numerics/solveSymmetric.ts';

/** An ellipse through points, with the covariance of its five numbers. */
export interface EllipseFit {
  readonly ellipse: Ellipse;
  /** Root of the sum of squared distances over the degrees of freedom, px; 0 when none is left. */
  readonly residualPx: number;
  readonly degreesOfFreedom: number;
  /**
   * Of (centre x, centre y, semi-major, semi-minor, angle) per square pixel of the points' variance: (J'J)^-1. A circle has
   * no direction, so then its last row and column say nothing.
   */
  readonly cofactor: readonly (readonly number[])[];
}

/**
 * Direct least squares fit of an ellipse, algebraic distance (Fitzgibbon, Pilu & Fisher 1999, IEEE PAMI 21:476), in the
 * partitioned form of Halir & Flusser 1998 (WSCG 6:125), which stays stable when the points lie exactly on an ellipse.
 *
 * @returns null when the points do not determine an ellipse (fewer than five, or on a line).
 */
export function directEllipse(points: readonly ImagePoint[]): Ellipse | null {
  if (points.length < 5) return null;
  const meanX = points.reduce((sum, point) => sum + point.xPx, 0) / points.length;
  const meanY = points.reduce((sum, point) => sum + point.yPx, 0) / points.length;
  const spread = Math.sqrt(points.reduce((sum, { xPx, yPx }) => sum + (xPx - meanX) ** 2 + (yPx - meanY) ** 2, 0) / points.length);
  if (!(spread > 0)) return null;
  const normalized = points.map(({ xPx, yPx }) => [(xPx - meanX) / spread, (yPx - meanY) / spread] as const);
  const quadratic = new Matrix(normalized.map(([x, y]) => [x * x, x * y, y * y]));
  const linear = new Matrix(normalized.map(([x, y]) => [x, y, 1]));
  const s1 = quadratic.transpose().mmul(quadratic);
  const s2 = quadratic.transpose().mmul(linear);
  const s3 = linear.transpose().mmul(linear);
  if (reciprocalCondition(s3) < 1e-12) return null;
  const toLinear = inverse(s3).mmul(s2.transpose()).mul(-1);
  const reduced = Matrix.add(s1, s2.mmul(toLinear));
  // Premultiplied by the inverse of the constraint 4 a c - b^2.
  const [r1, r2, r3] = [reduced.getRow(0), reduced.getRow(1), reduced.getRow(2)];
  const system = new Matrix([r3.map((v) => v / 2), r2.map((v) => -v), r1.map((v) => v / 2)]);
  const vectors = new EigenvalueDecomposition(system).eigenvectorMatrix;
  for (let column = 0; column < 3; column += 1) {
    const [a = 0, b = 0, c = 0] = vectors.getColumn(column);
    if (!(4 * a * c - b * b > 0)) continue;
    const [d = 0, e = 0, f = 0] = toLinear.mmul(Matrix.columnVector([a, b, c])).to1DArray();
    const found = ellipseOf([a, b, c, d, e, f]);
    if (!found) return null;
    return {
      centre: { xPx: meanX + spread * found.centre.xPx, yPx: meanY + spread * found.centre.yPx },
      semiMajorPx: spread * found.semiMajorPx,
      semiMinorPx: spread * found.semiMinorPx,
      angleRad: found.angleRad,
    };
  }
  return null;
}

function reciprocalCondition(symmetric: Matrix): number {
  const values = new EigenvalueDecomposition(symmetric, { assumeSymmetric: true }).realEigenvalues;
  return Math.min(...values) / Math.max(...values);
}

const MOST_ROUNDS = 100;
/** Steps shorter than this share of the major axis change nothing any more. */
const SETTLED = 1e-10;
const UNKNOWNS = 5;

/**
 * The ellipse with the least sum of squared distances to the points (Gander, Golub & Strebel 1994, BIT 34:558), by damped
 * Gauss-Newton on the signed distances.
 *
 * @param start such as the direct fit of the same points.
 * @param settled ends the search, as a share of the major axis.
 * @returns null when the fit leaves the ellipses (degenerates to a line) or has fewer than five points.
 */
export function geometricEllipse(points: readonly ImagePoint[], start: Ellipse, settled: number = SETTLED): EllipseFit | null {
  if (points.length < UNKNOWNS) return null;
  let ellipse = start;
  let current = linearize(ellipse, points);
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const step = dampedStep(current, damping);
    if (!step) return null;
    const next = moved(ellipse, step);
    const seen = next && linearize(next, points);
    if (next && seen && seen.sumOfSquares <= current.sumOfSquares) {
      ellipse = next;
      current = seen;
      damping /= 10;
      if (Math.hypot(...step) < settled * ellipse.semiMajorPx) break;
    } else {
      damping *= 10;
      if (damping > 1e12) break;
    }
  }
  const cofactor = cofactorOf(current.normal);
  if (!cofactor) return null;
  const degreesOfFreedom = points.length - UNKNOWNS;
  return {
    ellipse,
    residualPx: degreesOfFreedom > 0 ? Math.sqrt(current.sumOfSquares / degreesOfFreedom) : 0,
    degreesOfFreedom,
    cofactor,
  };
}

/** The normal equations of the distances' fall for (x, y, major, minor, angle). */
interface Linearized {
  /** J'J, row by row. */
  readonly normal: Float64Array;
  /** J'd */
  readonly towards: Float64Array;
  readonly sumOfSquares: number;
}

/** Distances from the ellipse, and how each falls when the ellipse moves outward there: the foot moves, its tangent part does not count. */
function linearize(ellipse: Ellipse, points: readonly ImagePoint[]): Linearized {
  const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
  const towards = new Float64Array(UNKNOWNS);
  const row = new Float64Array(UNKNOWNS);
  const { centre, semiMajorPx: a, semiMinorPx: b, angleRad } = ellipse;
  const [turnCos, turnSin] = [Math.cos(angleRad), Math.sin(angleRad)];
  let sumOfSquares = 0;
  for (const point of points) {
    const angle = nearestAngle(ellipse, point);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const length = Math.hypot(b * cos, a * sin);
    const [along, across] = [(b * cos) / length, (a * sin) / length];
    const [normalX, normalY] = [along * turnCos - across * turnSin, along * turnSin + across * turnCos];
    const footX = a * cos * turnCos - b * sin * turnSin;
    const footY = a * cos * turnSin + b * sin * turnCos;
    const distance = (point.xPx - centre.xPx - footX) * normalX + (point.yPx - centre.yPx - footY) * normalY;
    sumOfSquares += distance * distance;
    row[0] = normalX;
    row[1] = normalY;
    row[2] = along * cos;
    row[3] = across * sin;
    row[4] = normalY * footX - normalX * footY;
    for (let i = 0; i < UNKNOWNS; i += 1) {
      const value = row[i] ?? 0;
      towards[i] = (towards[i] ?? 0) + value * distance;
      for (let j = 0; j < UNKNOWNS; j += 1) normal[UNKNOWNS * i + j] = (normal[UNKNOWNS * i + j] ?? 0) + value * (row[j] ?? 0);
    }
  }
  return { normal, towards, sumOfSquares };
}

/** A whisper on the diagonal keeps a circle's angle, about which nothing is known, where it is. */
function dampedStep({ normal, towards }: Linearized, damping: number): Float64Array | null {
  const system = normal.slice();
  for (let i = 0; i < UNKNOWNS; i += 1) system[6 * i] = (normal[6 * i] ?? 0) * (1 + damping) + 1e-12;
  return solveSymmetric(system, towards.slice(), UNKNOWNS);
}

/** The ellipse moved by (x, y, major, minor, angle), its axes in order again; null when an axis vanishes. */
function moved({ centre, semiMajorPx, semiMinorPx, angleRad }: Ellipse, step: Float64Array): Ellipse | null {
  const [x = 0, y = 0, major = 0, minor = 0, turn = 0] = step;
  const [a, b] = [semiMajorPx + major, semiMinorPx + minor];
  if (!(a > 0 && b > 0 && Number.isFinite(a + b + x + y + turn))) return null;
  const quarter = a < b ? Math.PI / 2 : 0;
  return {
    centre: { xPx: centre.xPx + x, yPx: centre.yPx + y },
    semiMajorPx: Math.max(a, b),
    semiMinorPx: Math.min(a, b),
    angleRad: withinHalfTurn(angleRad + turn + quarter),
  };
}

function cofactorOf(normal: Float64Array): number[][] | null {
  const matrix = Matrix.from1DArray(UNKNOWNS, UNKNOWNS, normal);
  // The angle of a near-circle is free; a whisper of damping keeps the rest.
  for (let i = 0; i < UNKNOWNS; i += 1) matrix.set(i, i, matrix.get(i, i) + 1e-9);
  const result = inverse(matrix).to2DArray();
  return result.every((row) => row.every(Number.isFinite)) ? result : null;
}
