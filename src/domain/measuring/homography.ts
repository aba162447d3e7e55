import { LuDecomposition, Matrix, QrDecomposition, SingularValueDecomposition } from 'ml-matrix';
import { addScaled, type Matrix3, multiply, scale } from '../numerics/matrix3.ts';
import type { ImagePoint, PlanePoint } from './points.ts';

/** The map from the plane (mm) to the picture (px) that fits a set of point pairs, with how it answers to each of them. */
export interface HomographyFit {
  /** Takes (xMm, yMm, 1) to (xPx, yPx, 1) times a factor; its last entry is 1. */
  readonly matrix: Matrix3;
  /**
   * Change of `matrix` per pixel of each observation, in the order x1, y1, x2, y2 ...: the columns of (J'J)^-1 J'. With
   * independent observations of standard deviation s the covariance of the entries is s^2 sum(response x response').
   */
  readonly responses: readonly Matrix3[];
  /** Sum over all points of the squared distance between marked and mapped point, px^2; 0 for four points. */
  readonly residualSumOfSquaresPx2: number;
  /** 2 n - 8 */
  readonly degreesOfFreedom: number;
}

/**
 * Fits a homography by the normalized direct linear transform (Hartley 1997, IEEE PAMI 19:580; Hartley & Zisserman,
 * Multiple View Geometry, algorithm 4.2), refined by Gauss-Newton on the distances in the picture: the points of the plane
 * count as exact.
 *
 * @param plane n >= 4 points, mm.
 * @param image where they are in the picture, px, same order.
 * @returns null when the points do not determine a homography (three of four on a line, or coinciding).
 */
export function fitHomography(plane: readonly PlanePoint[], image: readonly ImagePoint[]): HomographyFit | null {
  if (plane.length < 4 || plane.length !== image.length) {
    throw new RangeError(`Expected four or more pairs of points, got ${plane.length} and ${image.length}`);
  }
  const from = normalization(plane.map((point) => [point.xMm, point.yMm]));
  const to = normalization(image.map((point) => [point.xPx, point.yPx]));
  if (!from || !to) return null;

  const start = directLinearTransform(from.points, to.points);
  if (!start) return null;
  const refined = refine(start, from.points, to.points);
  if (!refined) return null;

  const undo = (normalized: Matrix3): Matrix3 => multiply(to.inverse, multiply(normalized, from.matrix));
  const matrix = undo(refined.matrix);
  const factor = matrix[8];
  return {
    matrix: scale(matrix, 1 / factor),
    responses: refined.responses.map((response) => {
      const change = undo(response);
      // The last entry is kept at 1, so its change is carried by the others; the picture's normalization scales each pixel.
      return scale(addScaled(change, matrix, -change[8] / factor), to.scale / factor);
    }),
    residualSumOfSquaresPx2: refined.residualSumOfSquares / to.scale ** 2,
    degreesOfFreedom: 2 * plane.length - 8,
  };
}

/** Of a map of normalized points, relative to its entries: a card seen so much edge-on shows no second dimension. Own judgment. */
const LEAST_DETERMINANT = 1e-9;

type Pair = readonly [number, number];

/** Moves the centroid to 0 and the mean distance from it to sqrt 2. */
function normalization(points: readonly Pair[]): { points: readonly Pair[]; matrix: Matrix3; inverse: Matrix3; scale: number } | null {
  const centreX = points.reduce((sum, [x]) => sum + x, 0) / points.length;
  const centreY = points.reduce((sum, [, y]) => sum + y, 0) / points.length;
  const meanDistance = points.reduce((sum, [x, y]) => sum + Math.hypot(x - centreX, y - centreY), 0) / points.length;
  if (!(meanDistance > 0 && Number.isFinite(meanDistance))) return null;
  const factor = Math.SQRT2 / meanDistance;
  return {
    points: points.map(([x, y]) => [factor * (x - centreX), factor * (y - centreY)]),
    matrix: [factor, 0, -factor * centreX, 0, factor, -factor * centreY, 0, 0, 1],
    inverse: [1 / factor, 0, centreX, 0, 1 / factor, centreY, 0, 0, 1],
    scale: factor,
  };
}

function directLinearTransform(from: readonly Pair[], to: readonly Pair[]): Matrix3 | null {
  const rows = from.flatMap(([x, y], index) => {
    const [u, v] = to[index] ?? [0, 0];
    return [
      [0, 0, 0, -x, -y, -1, v * x, v * y, v],
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
    ];
  });
  // Four points give eight rows; a row of zeros makes the ninth right singular vector, the answer, available.
  if (rows.length < 9) rows.push([0, 0, 0, 0, 0, 0, 0, 0, 0]);
  const decomposition = new SingularValueDecomposition(new Matrix(rows), { computeLeftSingularVectors: false });
  const values = decomposition.diagonal;
  if (!((values[7] ?? 0) > 1e-9 * (values[0] ?? 0))) return null;
  const h = decomposition.rightSingularVectors.getColumn(8);
  const last = h[8] ?? 0;
  if (Math.abs(last) < 1e-9) return null;
  return toMatrix3(h.map((entry) => entry / last));
}

interface Refinement {
  readonly matrix: Matrix3;
  readonly responses: readonly Matrix3[];
  readonly residualSumOfSquares: number;
}

/** Gauss-Newton over the eight entries besides the last; quadratic near the direct solution, so few rounds do. */
function refine(start: Matrix3, from: readonly Pair[], to: readonly Pair[]): Refinement | null {
  let matrix = start;
  for (let round = 0; round < 20; round += 1) {
    const { residuals, jacobian } = linearize(matrix, from, to);
    const qr = new QrDecomposition(jacobian);
    if (!qr.isFullRank()) return null;
    const step = qr.solve(Matrix.columnVector(residuals)).to1DArray();
    matrix = addScaled(matrix, toMatrix3([...step, 0]), 1);
    if (Math.hypot(...step) < 1e-12) break;
  }
  const { residuals, jacobian } = linearize(matrix, from, to);
  if (!matrix.every(Number.isFinite) || flattens(matrix)) return null;
  // Normalized points keep J'J well conditioned, so its inverse loses nothing that the rounds above have not checked.
  const normal = new LuDecomposition(jacobian.transpose().mmul(jacobian));
  // Points nearly on a line pass the rank of the Jacobian, but not that of its square.
  if (normal.isSingular()) return null;
  const responses = jacobian
    .mmul(normal.solve(Matrix.eye(8)))
    .to2DArray()
    .map((response) => toMatrix3([...response, 0]));
  return { matrix, responses, residualSumOfSquares: residuals.reduce((sum, value) => sum + value * value, 0) };
}

/** Three of four points on a line leave a map that takes the whole plane to a line, but for what rounding makes of it. */
function flattens(h: Matrix3): boolean {
  const determinant = h[0] * (h[4] * h[8] - h[5] * h[7]) - h[1] * (h[3] * h[8] - h[5] * h[6]) + h[2] * (h[3] * h[7] - h[4] * h[6]);
  return !(Math.abs(determinant) > LEAST_DETERMINANT * Math.hypot(...h) ** 3);
}

/** Marked minus mapped coordinates, and the derivatives of the mapped ones by the first eight entries. */
function linearize(h: Matrix3, from: readonly Pair[], to: readonly Pair[]): { residuals: number[]; jacobian: Matrix } {
  const residuals: number[] = [];
  const rows: number[][] = [];
  from.forEach(([x, y], index) => {
    const [markedU, markedV] = to[index] ?? [0, 0];
    const w = h[6] * x + h[7] * y + h[8];
    const u = (h[0] * x + h[1] * y + h[2]) / w;
    const v = (h[3] * x + h[4] * y + h[5]) / w;
    residuals.push(markedU - u, markedV - v);
    rows.push([x / w, y / w, 1 / w, 0, 0, 0, (-u * x) / w, (-u * y) / w], [0, 0, 0, x / w, y / w, 1 / w, (-v * x) / w, (-v * y) / w]);
  });
  return { residuals, jacobian: new Matrix(rows) };
}

function toMatrix3(entries: readonly number[]): Matrix3 {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = entries;
  return [a, b, c, d, e, f, g, h, i];
}
