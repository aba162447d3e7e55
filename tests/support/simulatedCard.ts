import { type Calibration, calibrate } from '../../src/domain/measuring/calibrate.ts';
import type { RectangleScale, ScaleMarks } from '../../src/domain/measuring/calibration.ts';
import type { PictureFacts } from '../../src/domain/measuring/camera.ts';
import { KNOWN_RECTANGLES } from '../../src/domain/measuring/knownRectangles.ts';
import type { Pinhole } from './pinhole.ts';

/** An ID-1 card with its first corner in the origin, marked without error, and no thickness. */
export function cardSeenBy({ see }: Pick<Pinhole, 'see'>, change: Partial<RectangleScale> = {}): RectangleScale {
  const { widthMm, heightMm, widthStandardUncertaintyMm, heightStandardUncertaintyMm } = KNOWN_RECTANGLES['id-1'];
  return {
    kind: 'rectangle',
    object: 'id-1',
    corners: [see(0, 0), see(widthMm, 0), see(widthMm, heightMm), see(0, heightMm)],
    widthMm,
    heightMm,
    widthStandardUncertaintyMm,
    heightStandardUncertaintyMm,
    thicknessMm: 0,
    pointingPx: 1,
    ...change,
  };
}

export function calibrated(marks: ScaleMarks, picture: PictureFacts): Calibration {
  const result = calibrate(marks, picture);
  if (!result.ok) throw new Error(`Expected the marks to calibrate: ${result.failure.code}`);
  return result.value;
}
