import type { RectangleScale } from '../calibration.ts';
import type { ImagePoint } from '../points.ts';

/** Points of the four sides of a rectangle, from the first to the second corner and on. */
export type Sides = NonNullable<RectangleScale['sidePoints']>;
export type Side = Sides[number];

/** A straight line through points of a side. */
export interface SideLine {
  readonly through: ImagePoint;
  /** Unit vector from the first towards the last point. */
  readonly alongX: number;
  readonly alongY: number;
  /** Half of the distance between the first and the last point. */
  readonly halfPx: number;
  /** Standard uncertainty of `through` across the line, px, and of the direction, rad; uncorrelated. */
  readonly acrossPx: number;
  readonly angleRad: number;
  /** Mean square distance of the points over what their uncertainties let expect; at least 1, by which both are widened. */
  readonly excess: number;
}

/** The line through all points of a side, weighted by their uncertainties; null with fewer than three. */
export function sideLine(side: Side): SideLine | null {
  const [first, last] = [side[0], side.at(-1)];
  if (!first || !last || side.length < 3) return null;
  const chordPx = Math.hypot(last.xPx - first.xPx, last.yPx - first.yPx);
  if (!(chordPx > 0)) return null;
  const [chordX, chordY] = [(last.xPx - first.xPx) / chordPx, (last.yPx - first.yPx) / chordPx];
  let [sum, x, y] = [0, 0, 0];
  for (const { xPx, yPx, acrossPx } of side) {
    sum += acrossPx ** -2;
    x += xPx * acrossPx ** -2;
    y += yPx * acrossPx ** -2;
  }
  const through = { xPx: x / sum, yPx: y / sum };
  let [squares, products] = [0, 0];
  for (const { xPx, yPx, acrossPx } of side) {
    const along = (xPx - through.xPx) * chordX + (yPx - through.yPx) * chordY;
    const across = (yPx - through.yPx) * chordX - (xPx - through.xPx) * chordY;
    squares += along * along * acrossPx ** -2;
    products += along * across * acrossPx ** -2;
  }
  const slope = products / squares;
  const length = Math.hypot(1, slope);
  const [alongX, alongY] = [(chordX - slope * chordY) / length, (chordY + slope * chordX) / length];
  const off = ({ xPx, yPx, acrossPx }: Side[number]): number => ((yPx - through.yPx) * alongX - (xPx - through.xPx) * alongY) / acrossPx;
  const excess = Math.max(1, side.reduce((total, point) => total + off(point) ** 2, 0) / Math.max(1, side.length - 2));
  return {
    through,
    alongX,
    alongY,
    halfPx: chordPx / 2,
    acrossPx: Math.sqrt(excess / sum),
    angleRad: Math.sqrt(excess / squares),
    excess,
  };
}

/** Where neighboring sides meet, in the order of the corners; null where one of both was not seen or they are parallel. */
export function sidesMeet(sides: Sides): readonly [ImagePoint | null, ImagePoint | null, ImagePoint | null, ImagePoint | null] {
  const [top, right, bottom, left] = [sideLine(sides[0]), sideLine(sides[1]), sideLine(sides[2]), sideLine(sides[3])];
  const meet = (one: SideLine | null, other: SideLine | null) => one && other && meetingOf(one, other);
  return [meet(left, top), meet(top, right), meet(right, bottom), meet(bottom, left)];
}

/** Null for parallels. */
export function meetingOf(one: SideLine, other: SideLine): ImagePoint | null {
  const sine = one.alongX * other.alongY - one.alongY * other.alongX;
  if (!(Math.abs(sine) > 1e-6)) return null;
  const [dx, dy] = [other.through.xPx - one.through.xPx, other.through.yPx - one.through.yPx];
  const onOne = (dx * other.alongY - dy * other.alongX) / sine;
  return { xPx: one.through.xPx + onOne * one.alongX, yPx: one.through.yPx + onOne * one.alongY };
}
