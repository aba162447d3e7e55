import type { Ellipse } from '../../measuring/ellipse.ts';
import type { EllipseFit } from './fitEllipse.ts';

/**
 * Thickness over radius of the thickest coins of the table (20 euro cent, 2 x 2.14 / 22.25) and a little more: seen at an angle
 * whose sine is the eccentricity of the rim, the wall shows this times that, in radii.
 */
const THICKEST = 0.22;

/** How much of the wall of the thickest coin is seen on its near side, px. */
export function wallPx({ semiMajorPx, semiMinorPx }: Ellipse): number {
  return THICKEST * Math.sqrt(semiMajorPx ** 2 - semiMinorPx ** 2);
}

/** Own assumptions, held against rendered coins: what of the wall and, of a shadow about it, of the radius displaces a rim. */
const WALL_TAKEN_SHARE = 0.16;
const SHADOW_TAKEN_SHARE = 0.01;

/** Standard uncertainty, px, of an outline that may be that of rim and wall, or of shadow, anywhere around. */
export function unsettledPx(ellipse: Ellipse): number {
  return Math.hypot(WALL_TAKEN_SHARE * wallPx(ellipse), SHADOW_TAKEN_SHARE * ellipse.semiMinorPx);
}

const UNKNOWNS = 5;
/** Variances of middle (right, down) and radii (greater, lesser) from n points all around a circle, times n. */
const ALL_AROUND = [2, 2, 3, 3];
/** Neighboring rays see the same dirt and the same shadow: this many count as one. Own assumption. */
const RAYS_PER_INDEPENDENT_ONE = 10;

/**
 * Standard uncertainty of the rim as a whole, px. An arc leaves the middle and the radii less certain than the whole way round,
 * and what bevel and wear displace is enlarged alike: by the fit's own covariance over that of points all around a circle.
 */
export function uncertaintyOf({ residualPx, cofactor, degreesOfFreedom }: EllipseFit, systematicPx: number): number {
  const points = degreesOfFreedom + UNKNOWNS;
  const enlarged = Math.sqrt(points * Math.max(...ALL_AROUND.map((share, index) => (cofactor[index]?.[index] ?? 0) / share)));
  return Math.max(1, enlarged) * Math.hypot(residualPx / Math.sqrt(points / RAYS_PER_INDEPENDENT_ONE), systematicPx);
}
