import type { ImagePoint } from '../measuring/points.ts';
import { medianOf } from '../numerics/median.ts';

/** A straight line in the picture, fitted through points. */
export interface FittedLine {
  /** Weighted centroid of the points. */
  readonly through: ImagePoint;
  /** Unit vector along the line. */
  readonly alongX: number;
  readonly alongY: number;
  /** Standard uncertainty of the centroid across the line, px, and of the direction, rad; uncorrelated. */
  readonly acrossUncertaintyPx: number;
  readonly angleUncertaintyRad: number;
  /** Root of the weighted mean square distance of the points, px. */
  readonly residualPx: number;
  /** Points with at least half of the full weight. */
  readonly used: number;
}

/** Symmetric 2 x 2 covariance of a point, px^2. */
export interface PointCovariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

const ROUNDS = 12;
/** Full efficiency 95 % for normal errors (Holland & Welsch 1977, Communications in Statistics A6:813). */
const BISQUARE_CUTOFF = 4.685;
/** Makes the median absolute deviation of normal errors their standard deviation. */
const MAD_FACTOR = 1.4826;

/**
 * Orthogonal line through points some of which belong to something else: iteratively reweighted least squares with Tukey's
 * bisquare weights (Holland & Welsch 1977), scale from the median absolute deviation; each round is the principal axis of the
 * weighted points (Pearson 1901). It starts from the repeated median, which half of the points can't spoil.
 *
 * @param priors weights from 0 to 1 of what is known of the points beforehand; all alike when left out.
 * @param leastScalePx points nearer than a few of these are never outliers: the rounding of what they were found in.
 * @returns null with fewer than three points or when they coincide.
 */
export function fitLine(points: readonly ImagePoint[], leastScalePx = 0.02, priors?: readonly number[]): FittedLine | null {
  if (points.length < 3) return null;
  let belonging: readonly number[] = points.map(() => 1);
  const weighted = (): readonly number[] => belonging.map((weight, index) => weight * (priors?.[index] ?? 1));
  const first = principalAxis(points, weighted());
  let axis = first && repeatedMedian(points, first);
  for (let round = 0; round < ROUNDS && axis; round += 1) {
    const distances = distancesFrom(points, axis);
    const scale = robustScale(distances.map(Math.abs), leastScalePx);
    belonging = distances.map((distance) => {
      const ratio = distance / (BISQUARE_CUTOFF * scale);
      return Math.abs(ratio) < 1 ? (1 - ratio * ratio) ** 2 : 0;
    });
    axis = principalAxis(points, weighted());
  }
  if (!axis) return null;
  const weights = weighted();
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const distances = distancesFrom(points, axis);
  let acrossSquares = 0;
  let alongSquares = 0;
  points.forEach((point, index) => {
    const weight = weights[index] ?? 0;
    const along = (point.xPx - axis.through.xPx) * axis.alongX + (point.yPx - axis.through.yPx) * axis.alongY;
    acrossSquares += weight * (distances[index] ?? 0) ** 2;
    alongSquares += weight * along * along;
  });
  const variance = acrossSquares / Math.max(sum - 2, 1);
  return {
    ...axis,
    acrossUncertaintyPx: Math.sqrt(variance / sum),
    angleUncertaintyRad: Math.sqrt(variance / alongSquares),
    residualPx: Math.sqrt(acrossSquares / sum),
    used: belonging.filter((weight) => weight >= 0.5).length,
  };
}

type Axis = Pick<FittedLine, 'through' | 'alongX' | 'alongY'>;

function principalAxis(points: readonly ImagePoint[], weights: readonly number[]): Axis | null {
  let sum = 0;
  let x = 0;
  let y = 0;
  points.forEach((point, index) => {
    const weight = weights[index] ?? 0;
    sum += weight;
    x += weight * point.xPx;
    y += weight * point.yPx;
  });
  if (!(sum > 0)) return null;
  const through = { xPx: x / sum, yPx: y / sum };
  let xx = 0;
  let xy = 0;
  let yy = 0;
  points.forEach((point, index) => {
    const weight = weights[index] ?? 0;
    const dx = point.xPx - through.xPx;
    const dy = point.yPx - through.yPx;
    xx += weight * dx * dx;
    xy += weight * dx * dy;
    yy += weight * dy * dy;
  });
  if (!(xx + yy > 0)) return null;
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { through, alongX: Math.cos(angle), alongY: Math.sin(angle) };
}

/** Siegel 1982, Biometrika 69:242: the median over points of the median slope to the others, in the frame of a first axis. */
function repeatedMedian(points: readonly ImagePoint[], { through, alongX, alongY }: Axis): Axis {
  const local = points.map((point) => {
    const dx = point.xPx - through.xPx;
    const dy = point.yPx - through.yPx;
    return { along: dx * alongX + dy * alongY, across: dy * alongX - dx * alongY };
  });
  const slope = medianOf(
    local.map((one) =>
      medianOf(local.filter((other) => other.along !== one.along).map((other) => (other.across - one.across) / (other.along - one.along))),
    ),
  );
  const start = medianOf(local.map(({ along, across }) => across - slope * along));
  const length = Math.hypot(1, slope);
  return {
    through: { xPx: through.xPx - start * alongY, yPx: through.yPx + start * alongX },
    alongX: (alongX - slope * alongY) / length,
    alongY: (alongY + slope * alongX) / length,
  };
}

function distancesFrom(points: readonly ImagePoint[], axis: Axis): readonly number[] {
  return points.map((point) => offLinePx(point, axis));
}

/** Signed distance of a point from a line, px. */
export function offLinePx({ xPx, yPx }: ImagePoint, { through, alongX, alongY }: Axis): number {
  return (yPx - through.yPx) * alongX - (xPx - through.xPx) * alongY;
}

/** Standard deviation of normal errors from their median absolute value. */
export function robustScale(distances: readonly number[], leastPx: number): number {
  return Math.max(leastPx, MAD_FACTOR * medianOf(distances));
}

/** Where two lines meet, with the covariance that their uncertainties give it (JCGM 100:2008, 5.1.2); null when parallel. */
export function intersect(first: FittedLine, second: FittedLine): { readonly at: ImagePoint; readonly covariance: PointCovariance } | null {
  const sine = first.alongX * second.alongY - first.alongY * second.alongX;
  if (!(Math.abs(sine) > 1e-6)) return null;
  const dx = second.through.xPx - first.through.xPx;
  const dy = second.through.yPx - first.through.yPx;
  const onFirst = (dx * second.alongY - dy * second.alongX) / sine;
  const onSecond = (dx * first.alongY - dy * first.alongX) / sine;
  // A line shifted across by d moves the meeting point along the other line by d / sine.
  const acrossFirst = Math.hypot(first.acrossUncertaintyPx, first.angleUncertaintyRad * onFirst) / sine;
  const acrossSecond = Math.hypot(second.acrossUncertaintyPx, second.angleUncertaintyRad * onSecond) / sine;
  return {
    at: { xPx: first.through.xPx + onFirst * first.alongX, yPx: first.through.yPx + onFirst * first.alongY },
    covariance: {
      xx: (acrossFirst * second.alongX) ** 2 + (acrossSecond * first.alongX) ** 2,
      xy: acrossFirst ** 2 * second.alongX * second.alongY + acrossSecond ** 2 * first.alongX * first.alongY,
      yy: (acrossFirst * second.alongY) ** 2 + (acrossSecond * first.alongY) ** 2,
    },
  };
}
