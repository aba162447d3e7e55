import { type Result, succeed } from '../result.ts';
import type { RectangleScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { commonWarnings, tiltWarnings } from './commonWarnings.ts';
import { distance } from './corners.ts';
import type { PinholeCalibration } from './pinholeCalibration.ts';
import type { ThreeSides } from './threeSides.ts';
import { viewOfThreeSides } from './threeSidesView.ts';
import { localScaleMmPerPx, planePointOf } from './view.ts';

/** What a rectangle with one side hidden tells about a picture of known focal length. */
export function calibrateOnThreeSides(sides: ThreeSides, marks: RectangleScale, picture: PictureFacts): Result<PinholeCalibration> {
  const found = viewOfThreeSides(sides, marks, picture);
  if (!found.ok) return found;
  const { view, excursions, tiltDeg, corners } = found.value;
  const longestPx = Math.max(...corners.map((corner, index) => distance(corner, corners[(index + 1) % 4] ?? corner)));
  const relative = Math.max(marks.widthStandardUncertaintyMm / marks.widthMm, marks.heightStandardUncertaintyMm / marks.heightMm);
  const tiltUnknown = excursions.some(({ source }) => source === 'tilt-unknown');
  return succeed({
    kind: 'rectangle',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lensOf(picture).centre),
    tiltDeg,
    residualPx: null,
    station: view.station,
    faceHeightMm: marks.thicknessMm,
    outline: corners.flatMap((corner) => planePointOf(view.imageToPlane, corner) ?? []),
    reachMm: Math.max(marks.widthMm, marks.heightMm),
    warnings: [
      ...(tiltUnknown ? [{ code: 'tilt-unknown', by: 'rectangle' } as const] : tiltWarnings(tiltDeg)),
      { code: 'side-hidden', side: sides.hidden },
      ...commonWarnings(picture, longestPx, relative, true),
    ],
  });
}
