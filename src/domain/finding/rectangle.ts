import type { EdgePoint } from '../measuring/calibration.ts';
import { type Corners, distance } from '../measuring/corners.ts';
import type { ImagePoint } from '../measuring/points.ts';
import type { PointCovariance } from './line.ts';
import type { FoundSide } from './sideFit.ts';

export type Four<Value> = readonly [Value, Value, Value, Value];

/** A flat rectangle, its corners perhaps rounded. */
export interface RectangleShape {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cornerRadiusMm: number;
  /** Of its face above what it lies on: how far its shadow reaches. */
  readonly thicknessMm: number;
}

export interface FoundRectangle {
  /** Constructed: where the straight sides meet. In the order of the handles. */
  readonly corners: Corners;
  /** Of each corner, from the scatter of its two sides. */
  readonly covariances: Four<PointCovariance>;
  /** From the first to the second corner, and on. One may be null: then its corners follow from the object's known size and the focal length. */
  readonly sides: Four<FoundSide | null>;
}

export function eachSide<From, To>([a, b, c, d]: Four<From>, of: (side: From) => To): Four<To> {
  return [of(a), of(b), of(c), of(d)];
}

export function longestPx([a, b, c, d]: Corners): number {
  return Math.max(distance(a, b), distance(b, c), distance(c, d), distance(d, a));
}

/** Standard uncertainty of one corner per coordinate, px: the root of the mean of all variances. */
export function cornerUncertaintyPx({ covariances }: Pick<FoundRectangle, 'covariances'>): number {
  return Math.sqrt(covariances.reduce((sum, { xx, yy }) => sum + (xx + yy) / 2, 0) / 4);
}

function scaledPoint({ xPx, yPx }: ImagePoint, factor: number): ImagePoint {
  return { xPx: factor * xPx, yPx: factor * yPx };
}

export function scaledCorners(corners: Corners, factor: number): Corners {
  return [
    scaledPoint(corners[0], factor),
    scaledPoint(corners[1], factor),
    scaledPoint(corners[2], factor),
    scaledPoint(corners[3], factor),
  ];
}

export function enlargedRectangle({ corners, covariances, sides }: FoundRectangle, factor: number): FoundRectangle {
  const square = factor * factor;
  const side = (found: FoundSide | null): FoundSide | null =>
    found && {
      ...found,
      line: {
        ...found.line,
        through: scaledPoint(found.line.through, factor),
        acrossUncertaintyPx: factor * found.line.acrossUncertaintyPx,
        residualPx: factor * found.line.residualPx,
      },
      points: found.points.map((point) => enlargedEdgePoint(point, factor)),
    };
  return {
    corners: scaledCorners(corners, factor),
    covariances: eachSide(covariances, ({ xx, xy, yy }) => ({ xx: square * xx, xy: square * xy, yy: square * yy })),
    sides: eachSide(sides, side),
  };
}

export function enlargedEdgePoint({ xPx, yPx, acrossPx }: EdgePoint, factor: number): EdgePoint {
  return { xPx: factor * xPx, yPx: factor * yPx, acrossPx: factor * acrossPx };
}
