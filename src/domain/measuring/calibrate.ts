import { assertNever, type Result, succeed } from '../result.ts';
import { calibrateOnCoin } from './calibrateCoin.ts';
import { calibrateOnPoints } from './calibratePoints.ts';
import { calibrateOnRectangle } from './calibrateRectangle.ts';
import { calibrateOnRule } from './calibrateRule.ts';
import { calibrateOnTwoPoints } from './calibrateTwoPoints.ts';
import type { ScaleMarks } from './calibration.ts';
import type { PictureFacts } from './camera.ts';
import { distortionExcursion, unshiftedMarks } from './distortion.ts';
import { faceHeightExcursions } from './faceHeight.ts';
import { type LensFound, lensFound } from './lens/lensFound.ts';
import { radialShiftOf } from './lens/radialShift.ts';
import type { PinholeCalibration } from './pinholeCalibration.ts';
import type { View, ViewExcursion } from './view.ts';

/** Everything the marks on a scale object tell about a picture. Plain data, in the frame of the object's face. */
export interface Calibration extends PinholeCalibration {
  /** How the lens bends the picture; where it is corrected, all of the above holds for the corrected one. */
  readonly lens: LensFound;
}

/**
 * What the marks on a scale object tell about a picture.
 *
 * @param marks in the upright frame of the picture.
 * @returns a failure when the marks coincide, lie on a line, cross, run anticlockwise on the screen, or are no circle's picture;
 * when too few ticks lie in an even row, or three sides tell no rectangle.
 */
export function calibrate(marks: ScaleMarks, picture: PictureFacts): Result<Calibration> {
  const through = (seen: ScaleMarks): Result<PinholeCalibration> => calibrateThroughPinhole(seen, picture);
  const lens = lensFound(marks, picture);
  const radialShift = radialShiftOf(picture, lens.shift.cornerShare);
  const pinhole = through(lens.isCorrected ? unshiftedMarks(marks, radialShift) : marks);
  if (!pinhole.ok) return pinhole;
  const before = (view: View): View => (lens.isCorrected ? { ...view, radialShift } : view);
  const view = before(pinhole.value.view);
  const excursions: ViewExcursion[] = pinhole.value.excursions.map(({ source, below, above }) => ({
    source,
    below: before(below),
    above: before(above),
  }));
  excursions.push(...faceHeightExcursions(marks, view));
  excursions.push(distortionExcursion(marks, picture, view, through, lens.shift));
  return succeed({ ...pinhole.value, view, excursions, lens });
}

/** As if the lens drew straight lines straight. */
function calibrateThroughPinhole(marks: ScaleMarks, picture: PictureFacts): Result<PinholeCalibration> {
  switch (marks.kind) {
    case 'rectangle':
      return calibrateOnRectangle(marks, picture);
    case 'two-points':
      return calibrateOnTwoPoints(marks, picture);
    case 'coin':
      return calibrateOnCoin(marks, picture);
    case 'points':
      return calibrateOnPoints(marks, picture);
    case 'rule-ticks':
      return calibrateOnRule(marks, picture);
    default:
      return assertNever(marks);
  }
}
