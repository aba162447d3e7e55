import { type Result, succeed } from '../result.ts';
import type { RuleTicksScale } from './calibration.ts';
import type { CalibrationWarning } from './calibrationWarning.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { commonWarnings, tiltWarnings } from './commonWarnings.ts';
import { distance } from './corners.ts';
import type { PinholeCalibration } from './pinholeCalibration.ts';
import { viewOfRule } from './ruleView.ts';
import { localScaleMmPerPx, planePointOf } from './view.ts';

/** Of the middle of a tick, besides how it is found: engraved and printed rules are that uneven. Own assumption. */
const UNEVENNESS_MM = 0.02;
/** Ticks are found to a few hundredths of a pixel, in a poor picture to this; marks from before state the scatter itself. Own judgment. */
const LARGEST_PLACE_PX = 0.2;
/** Scatter beyond this many times what is expected is told. Own judgment. */
const SCATTER_COVERAGE = 2;

function scatterWarnings(
  { tickPx }: Pick<RuleTicksScale, 'tickPx'>,
  scatterPx: number,
  pxPerMm: number,
): readonly Extract<CalibrationWarning, { code: 'ticks-scatter' }>[] {
  const expectedPx = Math.hypot(Math.min(tickPx, LARGEST_PLACE_PX), UNEVENNESS_MM * pxPerMm);
  return scatterPx > SCATTER_COVERAGE * expectedPx
    ? [{ code: 'ticks-scatter', scatterPx, scatterMm: scatterPx / pxPerMm, expectedPx }]
    : [];
}

/** What the ticks of a rule tell about a picture. */
export function calibrateOnRule(marks: RuleTicksScale, picture: PictureFacts): Result<PinholeCalibration> {
  const geometry = viewOfRule(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions, tiltDeg, along, across, residualPx } = geometry.value;
  const lens = lensOf(picture);
  const numbers = marks.ticks.map(({ number }) => number);
  const spanMm = (Math.max(...numbers) - Math.min(...numbers)) * marks.graduationMm;
  const outermost = [Math.min(...numbers), Math.max(...numbers)].flatMap(
    (least) => marks.ticks.find(({ number }) => number === least) ?? [],
  );
  const [first, last] = outermost;
  const warnings = commonWarnings(picture, distance(...marks.ends), marks.spanStandardUncertaintyMm / spanMm, lens.known);
  if (excursions.some(({ source }) => source === 'tilt-unknown')) warnings.unshift({ code: 'tilt-unknown', by: 'rule-ticks' });
  else if (lens.known) warnings.push(...tiltWarnings(tiltDeg));
  if (first && last) warnings.push(...scatterWarnings(marks, residualPx, distance(first.from, last.from) / spanMm));
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
    outline: outermost.flatMap(({ from, to }) => [from, to]).flatMap((at) => planePointOf(view.imageToPlane, at) ?? []),
    reachMm: spanMm,
    warnings,
  });
}
