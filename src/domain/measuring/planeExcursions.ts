import { CholeskyDecomposition, type Matrix } from 'ml-matrix';
import type { Vector3 } from '../numerics/matrix3.ts';
import { SECOND_ORDER_SLOPE } from './slopePrior.ts';
import type { View, ViewExcursion } from './view.ts';

/**
 * What the view of a fitted plane becomes with each of three independent changes that together make up its covariance.
 *
 * @param covariance of the fit's parameters, of which the first three are the slopes and the natural logarithm of the depth.
 * @param viewAt the view with these three changed by so much.
 */
export function planeExcursions(covariance: Matrix, viewAt: (by: Vector3) => View): ViewExcursion[] {
  // Columns of a Cholesky factor are independent inputs of standard deviation 1 whose covariance is that of the parameters.
  const factor = new CholeskyDecomposition(covariance).lowerTriangularMatrix;
  const moved = (column: number, sign: number): View => {
    const [slopeX = 0, slopeY = 0, logDepth = 0] = factor.getColumn(column).map((value) => sign * value);
    return viewAt([slopeX, slopeY, logDepth]);
  };
  return [0, 1, 2].map((column) => ({
    // Unknown tilt moves lengths in second order, which only this source is propagated to.
    source: column < 2 && slopeUncertainty(covariance) > SECOND_ORDER_SLOPE ? 'tilt-unknown' : 'calibration',
    below: moved(column, -1),
    above: moved(column, 1),
  }));
}

/** The larger standard deviation of the slopes over all directions: the root of the larger eigenvalue of their covariance. */
export function slopeUncertainty(covariance: Matrix): number {
  const [xx, xy, yy] = [covariance.get(0, 0), covariance.get(0, 1), covariance.get(1, 1)];
  return Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
}
