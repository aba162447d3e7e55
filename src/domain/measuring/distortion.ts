import type { Result } from '../result.ts';
import type { ScaleMarks } from './calibration.ts';
import type { PictureFacts } from './camera.ts';
import { movedMarks } from './lens/movedMarks.ts';
import { type RadialShift, radialShiftOf, shifted, unshifted } from './lens/radialShift.ts';
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
