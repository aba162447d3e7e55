import { type Result, succeed } from '../result.ts';
import type { TwoPointScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { commonWarnings } from './commonWarnings.ts';
import { distance } from './corners.ts';
import type { PinholeCalibration } from './pinholeCalibration.ts';
import { viewOfTwoPoints } from './twoPointView.ts';
import { localScaleMmPerPx, planePointOf } from './view.ts';

export function calibrateOnTwoPoints(marks: TwoPointScale, picture: PictureFacts): Result<PinholeCalibration> {
  const geometry = viewOfTwoPoints(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions } = geometry.value;
  const lens = lensOf(picture);
  const relative = marks.distanceStandardUncertaintyMm / marks.distanceMm;
  return succeed({
    kind: 'two-points',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lens.centre),
    tiltDeg: null,
    residualPx: null,
    station: lens.known ? view.station : null,
    faceHeightMm: marks.heightMm,
    outline: marks.ends.flatMap((end) => planePointOf(view.imageToPlane, end) ?? []),
    reachMm: marks.distanceMm,
    warnings: [{ code: 'tilt-unknown', by: 'two-points' }, ...commonWarnings(picture, distance(...marks.ends), relative, lens.known)],
  });
}
