import type { Result } from '../result.ts';
import type { ScaleMarks } from './calibration.ts';
import type { PictureFacts } from './camera.ts';
import { movedMarks } from './lens/movedMarks.ts';
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

/** How far a lens shifts a point in the corner of the picture, as a share of its distance from the middle. */
export interface LensShift {
  readonly cornerShare: number;
  readonly standardUncertainty: number;
}

/** A lens of which nothing is known but the bound. */
export const WITHIN_BOUND: LensShift = { cornerShare: 0, standardUncertainty: CORNER_SHIFT_STANDARD_UNCERTAINTY };

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

/** Whether a point lies so far out that a lens which draws inward brings what is farther out nearer again: no photo shows it. */
export function foldsBack({ xPx, yPx }: ImagePoint, { centre, cornerPx, cornerShare }: RadialShift): boolean {
  const [x, y] = [xPx - centre.xPx, yPx - centre.yPx];
  return cornerPx * cornerPx + 3 * cornerShare * (x * x + y * y) <= 0;
}

/** Rounds of Newton's method: each doubles the digits, from a start that is a few per cent off. */
const ROUNDS = 6;

/** Where a point came from that the lens has shifted: the inverse of `shifted`, as far out as that is one. */
export function unshifted({ xPx, yPx }: ImagePoint, { centre, cornerPx, cornerShare }: RadialShift): ImagePoint {
  const [x, y] = [xPx - centre.xPx, yPx - centre.yPx];
  const seen = Math.hypot(x, y) / cornerPx;
  if (seen === 0) return { xPx, yPx };
  let was = seen;
  for (let round = 0; round < ROUNDS; round += 1) {
    was -= (was * (1 + cornerShare * was * was) - seen) / (1 + 3 * cornerShare * was * was);
  }
  return { xPx: centre.xPx + (x * was) / seen, yPx: centre.yPx + (y * was) / seen };
}

/** The marks as the lens shows them; what is known of the object itself stays. */
export function shiftedMarks<Marks extends ScaleMarks>(marks: Marks, by: RadialShift): Marks {
  return movedMarks(marks, (at) => shifted(at, by));
}

/** The marks as they would be without the lens's shift. */
export function unshiftedMarks<Marks extends ScaleMarks>(marks: Marks, by: RadialShift): Marks {
  return movedMarks(marks, (at) => unshifted(at, by));
}

/**
 * What the marks tell when the lens shifts by one standard uncertainty more or less than it is taken to. The points measured move along with the marks, so
 * that what both have in common cancels: a scale object close beside the skin takes most of it away. One far from it does not, even as
 * far from the middle: its corners make a tilt of what the lens did to them, and that grows with the distance from the object.
 *
 * @param view what the marks tell with the lens as it is taken to be.
 * @param lens how far it shifts the corner, as a share; nothing but the bound is known of most.
 * @param see what moved marks tell; where they no longer calibrate, the view stays and only the measured points move, which is more.
 */
export function distortionExcursion(
  marks: ScaleMarks,
  picture: PictureFacts,
  view: View,
  see: (marks: ScaleMarks) => Result<{ readonly view: View }>,
  lens: LensShift = WITHIN_BOUND,
): ViewExcursion {
  const moved = (cornerShare: number): View => {
    const radialShift = radialShiftOf(picture, cornerShare);
    const seen = see(unshiftedMarks(marks, radialShift));
    return { ...(seen.ok ? seen.value.view : view), radialShift };
  };
  return {
    source: 'distortion',
    below: moved(lens.cornerShare - lens.standardUncertainty),
    above: moved(lens.cornerShare + lens.standardUncertainty),
  };
}
