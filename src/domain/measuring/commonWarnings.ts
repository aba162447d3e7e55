import type { CalibrationWarning } from './calibrate.ts';
import type { PictureFacts } from './camera.ts';

const STRONG_TILT_DEG = 30;
const SMALL_SHARE_OF_WIDTH = 0.1;
const COARSE_RELATIVE_UNCERTAINTY = 0.0025;

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
