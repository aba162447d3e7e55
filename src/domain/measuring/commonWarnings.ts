import { contribution } from '../numerics/propagation.ts';
import type { CalibrationWarning } from './calibrationWarning.ts';
import type { PictureFacts } from './camera.ts';
import { CORNER_SHIFT_STANDARD_UNCERTAINTY } from './distortion.ts';
import type { PosedView } from './posedView.ts';
import type { ViewExcursion } from './view.ts';

const STRONG_TILT_DEG = 30;
const SMALL_SHARE_OF_WIDTH = 0.1;
const COARSE_RELATIVE_UNCERTAINTY = 0.0025;
/** Misfits beyond this many standard uncertainties are told: about 3 in 1000 by chance. */
const SHAPE_COVERAGE = 3;

export function tiltWarnings(tiltDeg: number): readonly CalibrationWarning[] {
  return tiltDeg > STRONG_TILT_DEG ? [{ code: 'strong-tilt', tiltDeg }] : [];
}

/** What is to be said of every kind of scale object. */
export function commonWarnings(
  picture: PictureFacts,
  longestPx: number,
  relativeStandardUncertainty: number,
  focalLengthKnown: boolean,
): CalibrationWarning[] {
  const warnings: CalibrationWarning[] = [];
  const shareOfWidth = longestPx / picture.widthPx;
  if (shareOfWidth < SMALL_SHARE_OF_WIDTH) warnings.push({ code: 'scale-object-small', shareOfWidth });
  if (relativeStandardUncertainty >= COARSE_RELATIVE_UNCERTAINTY)
    warnings.push({ code: 'scale-object-coarse', relativeStandardUncertainty });
  if (!focalLengthKnown) warnings.push({ code: 'focal-length-unknown' });
  return warnings;
}

/**
 * Whether the object's axes, as a camera with square pixels, its axis through the middle and the picture's focal length sees them,
 * are as long as each other and at right angles (Zhang 2000, IEEE PAMI 22:1330, section 3.1). A cropped picture has another middle.
 */
export function shapeWarnings(
  of: Extract<CalibrationWarning, { code: 'shape-disagrees' }>['of'],
  { view, excursions }: { readonly view: PosedView; readonly excursions: readonly ViewExcursion<PosedView>[] },
): readonly CalibrationWarning[] {
  const misfit = (by: (seen: PosedView) => number): number => {
    const variance = excursions.reduce((sum, excursion) => sum + contribution(by, excursion) ** 2, CORNER_SHIFT_STANDARD_UNCERTAINTY ** 2);
    return Math.abs(by(view)) / Math.sqrt(variance);
  };
  const aspectError = (seen: PosedView): number => seen.pose.aspect - 1;
  const skew = (seen: PosedView): number => seen.pose.skew;
  if (Math.max(misfit(aspectError), misfit(skew)) <= SHAPE_COVERAGE) return [];
  return [
    {
      code: 'shape-disagrees',
      of,
      aspectErrorPercent: 100 * aspectError(view),
      angleErrorDeg: (Math.asin(Math.max(-1, Math.min(1, skew(view)))) * 180) / Math.PI,
    },
  ];
}
