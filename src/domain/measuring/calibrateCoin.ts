import { type Result, succeed } from '../result.ts';
import type { CoinScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { viewOfCoin } from './coinView.ts';
import { commonWarnings, tiltWarnings } from './commonWarnings.ts';
import { pointOn } from './ellipse.ts';
import type { PinholeCalibration } from './pinholeCalibration.ts';
import { localScaleMmPerPx, planePointOf } from './view.ts';

const OUTLINE_POINTS = 24;

/** What the rim of a coin tells about a picture; `tiltDeg` stays null until the plane is decided. */
export function calibrateOnCoin(marks: CoinScale, picture: PictureFacts): Result<PinholeCalibration> {
  const geometry = viewOfCoin(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions, tiltDeg, solutions } = geometry.value;
  const lens = lensOf(picture);
  const warnings = commonWarnings(picture, 2 * marks.rim.semiMajorPx, marks.diameterStandardUncertaintyMm / marks.diameterMm, lens.known);
  if (!solutions) warnings.unshift({ code: 'tilt-unknown', by: 'coin' });
  else if (tiltDeg === null) warnings.unshift({ code: 'tilt-direction-open', tiltsDeg: [solutions[0].tiltDeg, solutions[1].tiltDeg] });
  else warnings.push(...tiltWarnings(tiltDeg));
  const rim = Array.from({ length: OUTLINE_POINTS }, (_, index) => pointOn(marks.rim, (2 * Math.PI * index) / OUTLINE_POINTS));
  return succeed({
    kind: 'coin',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lens.centre),
    tiltDeg,
    residualPx: null,
    station: lens.known ? view.station : null,
    faceHeightMm: marks.thicknessMm,
    outline: rim.flatMap((at) => planePointOf(view.imageToPlane, at) ?? []),
    reachMm: marks.diameterMm,
    warnings,
  });
}
