import { type Result, succeed } from '../result.ts';
import { calibrateOnThreeSides } from './calibrateThreeSides.ts';
import type { RectangleScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { commonWarnings, shapeWarnings, tiltWarnings } from './commonWarnings.ts';
import { distance } from './corners.ts';
import type { PinholeCalibration } from './pinholeCalibration.ts';
import { rectangleOutline, viewOfRectangle } from './rectangleView.ts';
import { rigidResidualPx } from './rigidResidual.ts';
import { threeSidesOf } from './threeSides.ts';
import { localScaleMmPerPx } from './view.ts';
import { numbersOutside } from './withinPicture.ts';

export function calibrateOnRectangle(marks: RectangleScale, picture: PictureFacts): Result<PinholeCalibration> {
  const lens = lensOf(picture);
  const three = marks.sidePoints && lens.known ? threeSidesOf(marks.sidePoints, marks) : null;
  if (three) return calibrateOnThreeSides(three, marks, picture);
  const geometry = viewOfRectangle(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions } = geometry.value;
  const { corners } = marks;
  const longestPx = Math.max(...corners.map((corner, index) => distance(corner, corners[(index + 1) % 4] ?? corner)));
  const relative = Math.max(marks.widthStandardUncertaintyMm / marks.widthMm, marks.heightStandardUncertaintyMm / marks.heightMm);
  const warnings = commonWarnings(picture, longestPx, relative, lens.known);
  const outside = marks.sidePoints === undefined ? numbersOutside(corners, picture) : [];
  if (outside.length > 0) warnings.push({ code: 'corners-beside-picture', corners: outside });
  if (lens.known) {
    warnings.push(...tiltWarnings(view.pose.tiltDeg), ...shapeWarnings('rectangle', geometry.value));
  }
  return succeed({
    kind: 'rectangle',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lens.centre),
    tiltDeg: lens.known ? view.pose.tiltDeg : null,
    residualPx: lens.known ? rigidResidualPx(view.pose.frame, lens, rectangleOutline(marks), corners) : null,
    station: lens.known ? view.station : null,
    faceHeightMm: marks.thicknessMm,
    outline: rectangleOutline(marks),
    reachMm: Math.max(marks.widthMm, marks.heightMm),
    warnings,
  });
}
