import { type Result, succeed } from '../result.ts';
import type { PinholeCalibration } from './calibrate.ts';
import type { RuleTicksScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { commonWarnings, tiltWarnings } from './commonWarnings.ts';
import { distance } from './corners.ts';
import { viewOfRule } from './ruleView.ts';
import { localScaleMmPerPx, planePointOf } from './view.ts';

/** What the ticks of a rule tell about a picture. */
export function calibrateOnRule(marks: RuleTicksScale, picture: PictureFacts): Result<PinholeCalibration> {
  const geometry = viewOfRule(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions, tiltDeg, along, across, residualPx } = geometry.value;
  const lens = lensOf(picture);
  const numbers = marks.ticks.map(({ number }) => number);
  const spanMm = (Math.max(...numbers) - Math.min(...numbers)) * marks.graduationMm;
  const warnings = commonWarnings(picture, distance(...marks.ends), marks.spanStandardUncertaintyMm / spanMm, lens.known);
  if (excursions.some(({ source }) => source === 'tilt-unknown')) warnings.unshift({ code: 'tilt-unknown', by: 'rule-ticks' });
  else if (lens.known) warnings.push(...tiltWarnings(tiltDeg));
  const outermost = [
    marks.ticks.find(({ number }) => number === Math.min(...numbers)),
    marks.ticks.find(({ number }) => number === Math.max(...numbers)),
  ];
  return succeed({
    kind: 'rule-ticks',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lens.centre),
    tiltDeg: lens.known ? tiltDeg : null,
    ...(lens.known && { ruleTilt: { along, across } }),
    residualPx,
    station: lens.known ? view.station : null,
    faceHeightMm: marks.heightMm,
    outline: outermost.flatMap((tick) => (tick ? [tick.from, tick.to] : [])).flatMap((at) => planePointOf(view.imageToPlane, at) ?? []),
    reachMm: spanMm,
    warnings,
  });
}
