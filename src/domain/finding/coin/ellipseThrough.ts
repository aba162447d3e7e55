import { type Ellipse, ellipseOf } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { solveSymmetric } from '../../numerics/solveSymmetric.ts';

const UNKNOWNS = 5;

/**
 * A quick fit for many trials: the conic a x^2 + b x y + c y^2 + d x + e y = 1 about a point inside, by linear least squares. The
 * constant must not vanish, hence the inner point; with six good points there is little between this and the best fit.
 *
 * @param rough gives a point inside, and the size.
 * @returns a function of `count` points or more, which answers null when they determine no ellipse.
 */
export function ellipseThrough(count: number, rough: Ellipse): (points: readonly ImagePoint[]) => Ellipse | null {
  const { centre, semiMajorPx: unit } = rough;
  // Filled anew by each call: hundreds of trials share them.
  const matrix = new Float64Array(UNKNOWNS * UNKNOWNS);
  const right = new Float64Array(UNKNOWNS);
  const row = new Float64Array(UNKNOWNS);
  return (points) => {
    if (points.length < count) return null;
    matrix.fill(0);
    right.fill(0);
    for (const { xPx, yPx } of points) {
      const [x, y] = [(xPx - centre.xPx) / unit, (yPx - centre.yPx) / unit];
      row[0] = x * x;
      row[1] = x * y;
      row[2] = y * y;
      row[3] = x;
      row[4] = y;
      for (let i = 0; i < UNKNOWNS; i += 1) {
        const value = row[i] ?? 0;
        right[i] = (right[i] ?? 0) + value;
        for (let j = 0; j < UNKNOWNS; j += 1) matrix[UNKNOWNS * i + j] = (matrix[UNKNOWNS * i + j] ?? 0) + value * (row[j] ?? 0);
      }
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0] = solveSymmetric(matrix, right, UNKNOWNS) ?? [];
    const found = ellipseOf([a, b, c, d, e, -1]);
    if (!found) return null;
    return {
      centre: { xPx: centre.xPx + unit * found.centre.xPx, yPx: centre.yPx + unit * found.centre.yPx },
      semiMajorPx: unit * found.semiMajorPx,
      semiMinorPx: unit * found.semiMinorPx,
      angleRad: found.angleRad,
    };
  };
}
