import type { Calibration } from '../calibrate.ts';
import type { ScaleMarks } from '../calibration.ts';
import type { PictureFacts } from '../camera.ts';
import { distance } from '../corners.ts';
import { pointOn } from '../ellipse.ts';
import type { ImagePoint } from '../points.ts';
import { type Estimate, estimateFrom } from '../quantity.ts';
import { planePointOf } from '../view.ts';
import { radialShiftOf, unshifted } from './radialShift.ts';

/**
 * How far, on the plane of the scale object, the lens drew the object's outermost mark beside its place, in mm; negative
 * towards the middle of the picture. Of a lens that is not corrected only the uncertainty differs from zero.
 *
 * @returns null beyond the horizon.
 */
export function lensShowsOn(marks: ScaleMarks, { view, lens }: Pick<Calibration, 'view' | 'lens'>, picture: PictureFacts): Estimate | null {
  const middle = { xPx: picture.widthPx / 2, yPx: picture.heightPx / 2 };
  const [first, ...others] = placesOf(marks);
  if (first === undefined) return null;
  const at = others.reduce((outermost, place) => (distance(place, middle) > distance(outermost, middle) ? place : outermost), first);
  const seen = planePointOf(view.imageToPlane, at);
  const byMm = (cornerShare: number): number | null => {
    const was = planePointOf(view.imageToPlane, unshifted(at, radialShiftOf(picture, cornerShare)));
    return seen && was && Math.sign(cornerShare) * Math.hypot(seen.xMm - was.xMm, seen.yMm - was.yMm);
  };
  const { cornerShare, standardUncertainty } = lens.shift;
  const [value, more, less] = [cornerShare, cornerShare + standardUncertainty, cornerShare - standardUncertainty].map(byMm);
  if (typeof value !== 'number' || typeof more !== 'number' || typeof less !== 'number') return null;
  return estimateFrom(value, Math.abs(more - less) / 2);
}

const RIM_PLACES = 16;

function placesOf(marks: ScaleMarks): readonly ImagePoint[] {
  switch (marks.kind) {
    case 'two-points':
      return marks.ends;
    case 'rectangle':
      return marks.corners;
    case 'coin':
      return Array.from({ length: RIM_PLACES }, (_, index) => pointOn(marks.rim, (2 * Math.PI * index) / RIM_PLACES));
    case 'points':
      return marks.points.map(({ at }) => at);
    case 'rule-ticks':
      return marks.ticks.flatMap(({ from, to }) => [from, to]);
  }
}
