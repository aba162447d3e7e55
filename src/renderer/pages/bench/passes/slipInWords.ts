import type { Slip } from '../../../../domain/agreement/slips.ts';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import { distance } from '../../../../domain/measuring/corners.ts';
import { toPlane } from '../../../../domain/measuring/onPlane.ts';
import type { ReadingDraft } from '../../../../domain/measuring/reading.ts';
import { landmarkName } from '../../../../words/landmarks.ts';

/** Which point of which pass lies where, and how far from the same one in the other pass: on the plane of the scale, if there is one. */
export function slipInWords(
  { name, pass, other, takenFor, places }: Omit<Slip, 'pass' | 'other'> & Readonly<Record<'pass' | 'other', Pick<ReadingDraft, 'pass'>>>,
  calibration: Pick<Calibration, 'view'> | null,
): string {
  const apart = `“${landmarkName(name)}” of pass ${pass.pass} lies ${apartInWords(places, calibration)} from that of pass ${other.pass}`;
  return takenFor === null
    ? `${apart}: a stray click in one of them?`
    : `${apart}, where pass ${other.pass} has “${landmarkName(takenFor)}”: another point?`;
}

function apartInWords([one, other]: Slip['places'], calibration: Pick<Calibration, 'view'> | null): string {
  const [from, to] = calibration === null ? [null, null] : [toPlane(calibration, one), toPlane(calibration, other)];
  return from === null || to === null
    ? `${distance(one, other).toFixed(0)} px`
    : `${Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm).toFixed(1)} mm`;
}
