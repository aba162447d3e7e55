import { lensOf, type PictureFacts } from '../measuring/camera.ts';
import { type Corners, distance } from '../measuring/corners.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { threeSidesOf } from '../measuring/threeSides.ts';
import { viewOfThreeSides } from '../measuring/threeSidesView.ts';
import { fail, type Result, succeed } from '../result.ts';
import { type FittedLine, intersect, type PointCovariance } from './line.ts';
import type { FoundRectangle, Four, RectangleShape } from './rectangle.ts';
import type { FoundSide } from './sideFit.ts';

type Meeting = NonNullable<ReturnType<typeof intersect>>;

/** Where four sides meet, beginning with the last and the first; null when neighbors are parallel. */
export function cornersOf(top: FittedLine, right: FittedLine, bottom: FittedLine, left: FittedLine): Four<Meeting> | null {
  const a = intersect(left, top);
  const b = intersect(top, right);
  const c = intersect(right, bottom);
  const d = intersect(bottom, left);
  return a && b && c && d ? [a, b, c, d] : null;
}

/** A corner this far from where it was expected, as a share of the longest side, is another object's: handles lie within 3 %. Own judgment. */
const FARTHEST_SHARE = 0.06;
/** Beyond that a corner may lie as far off as three of its own standard uncertainties. */
const FARTHEST_DEVIATIONS = 3;

/**
 * Corners from the sides that were found. With one side missing the picture alone no longer tells its two corners: they are where a
 * rectangle of the known proportions has them in the plane of the other three, which the picture's focal length gives. What is lost:
 * the misfit of the shape can no longer give a wrong corner away, and an error of the focal length turns the plane.
 *
 * @param expected roughly where the corners are.
 * @returns `sides-not-found` with fewer than three sides; `three-sides-implausible`, also where the focal length is unknown.
 */
export function constructCorners(
  sides: Four<FoundSide | null>,
  expected: Corners,
  shape: RectangleShape,
  picture: PictureFacts,
): Result<FoundRectangle> {
  const missing = sides.flatMap((side, index) => (side ? [] : [index]));
  const [top, right, bottom, left] = sides;
  if (top && right && bottom && left) {
    const met = cornersOf(top.line, right.line, bottom.line, left.line);
    if (!met) return fail({ code: 'corners-collinear' });
    const [a, b, c, d] = met;
    return succeed({ corners: [a.at, b.at, c.at, d.at], covariances: [a.covariance, b.covariance, c.covariance, d.covariance], sides });
  }
  const points = (side: FoundSide | null) => [...(side?.points ?? [])];
  const three = threeSidesOf([points(top), points(right), points(bottom), points(left)], shape);
  if (!three) return fail({ code: 'sides-not-found', sides: missing });
  if (!lensOf(picture).known) return fail({ code: 'three-sides-implausible', hidden: three.hidden, reason: 'focal-length-unknown' });
  const found = viewOfThreeSides(three, { ...shape, widthStandardUncertaintyMm: 0, heightStandardUncertaintyMm: 0 }, picture);
  if (!found.ok) return found;
  const { corners, moved } = found.value;
  const covariance = (index: 0 | 1 | 2 | 3): PointCovariance =>
    covarianceOf(
      corners[index],
      moved.map((others) => others[index]),
    );
  const covariances: Four<PointCovariance> = [covariance(0), covariance(1), covariance(2), covariance(3)];
  const longestPx = Math.max(...expected.map((corner, index) => distance(corner, expected[(index + 1) % 4] ?? corner)));
  const isFar = corners.some((corner, index) => {
    const { xx, yy } = covariances[index as 0 | 1 | 2 | 3];
    const at = expected[index] ?? corner;
    return distance(corner, at) > FARTHEST_SHARE * longestPx + FARTHEST_DEVIATIONS * Math.sqrt(xx + yy);
  });
  if (isFar) return fail({ code: 'three-sides-implausible', hidden: three.hidden, reason: 'far-from-handles' });
  return succeed({ corners, covariances, sides });
}

/** First-order propagation with each input moved by its standard uncertainty (JCGM 100:2008, 5.1.3 NOTE 2). */
function covarianceOf({ xPx, yPx }: ImagePoint, moved: readonly ImagePoint[]): PointCovariance {
  let [xx, xy, yy] = [0, 0, 0];
  for (const at of moved) {
    xx += (at.xPx - xPx) ** 2;
    xy += (at.xPx - xPx) * (at.yPx - yPx);
    yy += (at.yPx - yPx) ** 2;
  }
  return { xx, xy, yy };
}
