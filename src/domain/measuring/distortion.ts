import { assertNever, type Result } from '../result.ts';
import type { ScaleMarks } from './calibration.ts';
import type { PictureFacts } from './camera.ts';
import { type Ellipse, pointOn, withinHalfTurn } from './ellipse.ts';
import type { ImagePoint } from './points.ts';
import type { View, ViewExcursion } from './view.ts';

/**
 * How far the lens may shift a point in the corner of the picture towards the middle or away from it, as a share of its distance from
 * the middle. Cameras correct most of their distortion themselves; what they leave of it is commonly 0.1 to 0.5 %. From memory, no
 * source for phones; the quantity is the radial distortion of ISO 17850:2015. A camera that corrects nothing can do worse.
 */
export const CORNER_SHIFT_BOUND = 0.005;

/** Anything within the bound is as likely as anything else: a rectangular distribution (JCGM 100:2008, 4.3.7). */
export const CORNER_SHIFT_STANDARD_UNCERTAINTY = CORNER_SHIFT_BOUND / Math.sqrt(3);

/** Distortion with one parameter (Brown 1971, Photogrammetric Engineering 37:855): the shift grows with the cube of the distance. */
export interface RadialShift {
  /** The middle of the picture. */
  readonly centre: ImagePoint;
  /** From the middle to a corner. */
  readonly cornerPx: number;
  /** Of a point in the corner, away from the middle, over `cornerPx`. */
  readonly cornerShare: number;
}

export function radialShiftOf({ widthPx, heightPx }: Pick<PictureFacts, 'widthPx' | 'heightPx'>, cornerShare: number): RadialShift {
  return { centre: { xPx: widthPx / 2, yPx: heightPx / 2 }, cornerPx: Math.hypot(widthPx, heightPx) / 2, cornerShare };
}

/** Where a point goes. */
export function shifted({ xPx, yPx }: ImagePoint, { centre, cornerPx, cornerShare }: RadialShift): ImagePoint {
  const [x, y] = [xPx - centre.xPx, yPx - centre.yPx];
  const factor = 1 + (cornerShare * (x * x + y * y)) / (cornerPx * cornerPx);
  return { xPx: centre.xPx + x * factor, yPx: centre.yPx + y * factor };
}

/** Where all points of the marks go; what is known of the object itself stays. */
export function shiftedMarks<Marks extends ScaleMarks>(marks: Marks, by: RadialShift): Marks;
export function shiftedMarks(marks: ScaleMarks, by: RadialShift): ScaleMarks {
  const move = (at: ImagePoint): ImagePoint => shifted(at, by);
  switch (marks.kind) {
    case 'two-points':
      return { ...marks, ends: [move(marks.ends[0]), move(marks.ends[1])] };
    case 'rectangle': {
      const [a, b, c, d] = marks.corners;
      return { ...marks, corners: [move(a), move(b), move(c), move(d)] };
    }
    case 'coin':
      return { ...marks, rim: shiftedEllipse(marks.rim, by) };
    case 'points':
      return { ...marks, points: marks.points.map((point) => ({ ...point, at: move(point.at) })) };
    case 'rule-ticks':
      return {
        ...marks,
        ends: [move(marks.ends[0]), move(marks.ends[1])],
        ticks: marks.ticks.map(({ number, from, to }) => ({ number, from: move(from), to: move(to) })),
      };
    default:
      return assertNever(marks);
  }
}

/**
 * What the marks tell when the lens shifts by one standard uncertainty either way. The points measured move along with the marks, so
 * that what both have in common cancels: a scale object close beside the skin takes most of it away. One far from it does not, even as
 * far from the middle: its corners make a tilt of what the lens did to them, and that grows with the distance from the object.
 *
 * @param view what the marks tell as they are.
 * @param see what moved marks tell; where they no longer calibrate, the view stays and only the measured points move, which is more.
 */
export function distortionExcursion(
  marks: ScaleMarks,
  picture: PictureFacts,
  view: View,
  see: (marks: ScaleMarks) => Result<{ readonly view: View }>,
): ViewExcursion {
  const moved = (cornerShare: number): View => {
    const radialShift = radialShiftOf(picture, cornerShare);
    const seen = see(shiftedMarks(marks, radialShift));
    return { ...(seen.ok ? seen.value.view : view), radialShift };
  };
  return {
    source: 'distortion',
    below: moved(-CORNER_SHIFT_STANDARD_UNCERTAINTY),
    above: moved(CORNER_SHIFT_STANDARD_UNCERTAINTY),
  };
}

const RIM_POINTS = 16;

/** The mean and the first harmonic of the moved rim: the middle and two conjugate half-diameters of the ellipse nearest to it. */
function shiftedEllipse(rim: Ellipse, by: RadialShift): Ellipse {
  const sum = { x: 0, y: 0, cosX: 0, cosY: 0, sinX: 0, sinY: 0 };
  for (let index = 0; index < RIM_POINTS; index += 1) {
    const angle = (2 * Math.PI * index) / RIM_POINTS;
    const { xPx, yPx } = shifted(pointOn(rim, angle), by);
    const [x, y] = [xPx - rim.centre.xPx, yPx - rim.centre.yPx];
    sum.x += x / RIM_POINTS;
    sum.y += y / RIM_POINTS;
    sum.cosX += (2 * x * Math.cos(angle)) / RIM_POINTS;
    sum.cosY += (2 * y * Math.cos(angle)) / RIM_POINTS;
    sum.sinX += (2 * x * Math.sin(angle)) / RIM_POINTS;
    sum.sinY += (2 * y * Math.sin(angle)) / RIM_POINTS;
  }
  const { cosX, cosY, sinX, sinY } = sum;
  // The distance from the middle is greatest at this angle and least a quarter further on.
  const turn = Math.atan2(2 * (cosX * sinX + cosY * sinY), cosX ** 2 + cosY ** 2 - sinX ** 2 - sinY ** 2) / 2;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [majorX, majorY] = [cosX * cos + sinX * sin, cosY * cos + sinY * sin];
  return {
    centre: { xPx: rim.centre.xPx + sum.x, yPx: rim.centre.yPx + sum.y },
    semiMajorPx: Math.hypot(majorX, majorY),
    semiMinorPx: Math.hypot(sinX * cos - cosX * sin, sinY * cos - cosY * sin),
    angleRad: withinHalfTurn(Math.atan2(majorY, majorX)),
  };
}
