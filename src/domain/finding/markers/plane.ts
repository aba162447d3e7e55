import { fitHomography } from '../../measuring/homography.ts';
import type { ImagePoint, PlanePoint } from '../../measuring/points.ts';
import { type Matrix3, transform } from '../../numerics/matrix3.ts';
import { medianOf } from '../../numerics/median.ts';

export interface PointPair {
  readonly at: ImagePoint;
  readonly xMm: number;
  readonly yMm: number;
}

export function seenAt(planeToImage: Matrix3, { xMm, yMm }: PlanePoint): ImagePoint {
  const [x, y, w] = transform(planeToImage, xMm, yMm, 1);
  return { xPx: x / w, yPx: y / w };
}

export interface PlaneThrough {
  readonly matrix: Matrix3;
  readonly kept: readonly PointPair[];
  /** Root mean square of both coordinates' misfits over the degrees of freedom; null when none is left. */
  readonly scatterPx: number | null;
}

/** Points farther out than this many scatters belong to something else. */
const OUTLIER_SCATTERS = 4;
/** Makes the median distance of normal errors in the plane their standard deviation per coordinate: 1 / sqrt(2 ln 2). */
const MEDIAN_TO_SCATTER = 0.8493;
const ROUNDS = 6;

/**
 * The map of one plane through points some of which may be wrong: the worst are taken out until the rest agree.
 *
 * @param leastScatterPx points within a few of these are never taken out.
 * @returns null when fewer than four are left or they lie on a line.
 */
export function planeThrough(pairs: readonly PointPair[], leastScatterPx: number): PlaneThrough | null {
  let kept = pairs;
  for (let round = 0; round < ROUNDS; round += 1) {
    if (kept.length < 4) return null;
    const fit = fitHomography(
      kept,
      kept.map(({ at }) => at),
    );
    if (!fit) return null;
    const misfits = kept.map((pair) => {
      const seen = seenAt(fit.matrix, pair);
      return Math.hypot(seen.xPx - pair.at.xPx, seen.yPx - pair.at.yPx);
    });
    const limit = OUTLIER_SCATTERS * Math.max(leastScatterPx, MEDIAN_TO_SCATTER * medianOf(misfits));
    const next = kept.filter((_, index) => (misfits[index] ?? 0) <= limit);
    if (next.length === kept.length) {
      const scatterPx = fit.degreesOfFreedom > 0 ? Math.sqrt(fit.residualSumOfSquaresPx2 / fit.degreesOfFreedom) : null;
      return { matrix: fit.matrix, kept, scatterPx };
    }
    kept = next;
  }
  return null;
}
