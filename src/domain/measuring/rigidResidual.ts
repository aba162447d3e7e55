import { Matrix, QrDecomposition } from 'ml-matrix';
import { cross, type Vector3 } from '../numerics/matrix3.ts';
import type { Lens, PlaneFrame } from './camera.ts';
import type { ImagePoint, PlanePoint } from './points.ts';

/** Gauss-Newton from a pose that is already near: each round squares the error. */
const ROUNDS = 4;

/**
 * Root mean square distance, px, between marked points and the same points of a rigid plane seen through a lens, with the
 * plane turned and moved (six parameters) so that the sum of squares is least.
 *
 * @param start the plane's pose to begin with.
 * @param plane three or more points, mm; `marked` the same in the picture.
 */
export function rigidResidualPx(start: PlaneFrame, lens: Lens, plane: readonly PlanePoint[], marked: readonly ImagePoint[]): number {
  let frame = start;
  let best = linearize(frame, lens, plane, marked);
  for (let round = 0; round < ROUNDS; round += 1) {
    const qr = new QrDecomposition(new Matrix(best.rows));
    if (!qr.isFullRank()) break;
    const [a = 0, b = 0, c = 0, x = 0, y = 0, z = 0] = qr.solve(Matrix.columnVector(best.residuals)).to1DArray();
    frame = move(frame, [a, b, c], [x, y, z]);
    const next = linearize(frame, lens, plane, marked);
    if (!(next.sumOfSquares < best.sumOfSquares)) break;
    best = next;
  }
  return Math.sqrt(best.sumOfSquares / plane.length);
}

/** Marked minus seen coordinates, and derivatives of the seen ones by a small turn about the anchor (rad) and a shift (mm). */
function linearize(
  { anchor, position, right, down }: PlaneFrame,
  { focalPx, centre }: Lens,
  plane: readonly PlanePoint[],
  marked: readonly ImagePoint[],
) {
  const residuals: number[] = [];
  const rows: number[][] = [];
  plane.forEach((point, index) => {
    const x = point.xMm - anchor.xMm;
    const y = point.yMm - anchor.yMm;
    const arm: Vector3 = [right[0] * x + down[0] * y, right[1] * x + down[1] * y, right[2] * x + down[2] * y];
    const depth = position[2] + arm[2];
    const u = (focalPx * (position[0] + arm[0])) / depth;
    const v = (focalPx * (position[1] + arm[1])) / depth;
    const at = marked[index] ?? { xPx: centre.xPx + u, yPx: centre.yPx + v };
    residuals.push(at.xPx - centre.xPx - u, at.yPx - centre.yPx - v);
    // A turn w moves the point by w x arm.
    rows.push(
      [(-u * arm[1]) / depth, (focalPx * arm[2] + u * arm[0]) / depth, (-focalPx * arm[1]) / depth, focalPx / depth, 0, -u / depth],
      [(-focalPx * arm[2] - v * arm[1]) / depth, (v * arm[0]) / depth, (focalPx * arm[0]) / depth, 0, focalPx / depth, -v / depth],
    );
  });
  return { residuals, rows, sumOfSquares: residuals.reduce((sum, value) => sum + value * value, 0) };
}

function move({ anchor, position, right, down }: PlaneFrame, turn: Vector3, shift: Vector3): PlaneFrame {
  return {
    anchor,
    position: [position[0] + shift[0], position[1] + shift[1], position[2] + shift[2]],
    right: rotate(right, turn),
    down: rotate(down, turn),
  };
}

/** Rodrigues' rotation of a vector by the rotation vector `turn`, rad. */
function rotate(vector: Vector3, turn: Vector3): Vector3 {
  const angle = Math.hypot(...turn);
  if (angle === 0) return vector;
  const axis: Vector3 = [turn[0] / angle, turn[1] / angle, turn[2] / angle];
  const along = (axis[0] * vector[0] + axis[1] * vector[1] + axis[2] * vector[2]) * (1 - Math.cos(angle));
  const across = cross(axis, vector);
  const component = (index: 0 | 1 | 2): number => vector[index] * Math.cos(angle) + across[index] * Math.sin(angle) + axis[index] * along;
  return [component(0), component(1), component(2)];
}
