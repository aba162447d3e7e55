import type { Calibration } from './calibrate.ts';
import type { Shown } from './heights.ts';
import { type LandmarkName, pointOf } from './landmarks.ts';
import { carapaceHeights } from './measure.ts';
import type { ReadingDraft } from './reading.ts';
import { spacePointOf } from './view.ts';

/** How high one landmark is taken to lie, and what that changes. */
export interface HeightCorrection {
  readonly heightMm: number;
  /** Of this landmark's height: its own and the one it shares with its fellows. */
  readonly standardUncertaintyMm: number;
  /** A default, nothing the keeper stated. */
  readonly assumed: boolean;
  /** A share of a width that is not known yet: the figures say nothing. */
  readonly waitsForWidth: boolean;
  /**
   * How far the landmark lies from where its pixel meets the plane of the scale object's face, along that plane. The height
   * counts from the face: an object as thick as the landmark is high leaves nothing to correct. Null without a camera station
   * and for landmarks without a point on the plane.
   */
  readonly shiftMm: number | null;
}

/** What the height of one landmark changes under a calibration. */
export function heightCorrectionOf(
  name: LandmarkName,
  reading: Pick<ReadingDraft, 'landmarks' | 'carapaceHeight'>,
  calibration: Calibration,
  shown: Shown = 'skin',
): HeightCorrection {
  const heights = carapaceHeights(reading, calibration, { shown });
  const { heightMm, ownStandardUncertaintyMm, sharedStandardUncertaintyMm, assumed, waitsForWidth } = heights.of(name);
  const at = pointOf(reading.landmarks[name]);
  return {
    heightMm,
    standardUncertaintyMm: Math.hypot(ownStandardUncertaintyMm, sharedStandardUncertaintyMm),
    assumed,
    waitsForWidth,
    shiftMm:
      at === null || waitsForWidth || calibration.station === null ? null : shiftOf(calibration, at, heightMm - calibration.faceHeightMm),
  };
}

function shiftOf({ view }: Calibration, at: { readonly xPx: number; readonly yPx: number }, aboveFaceMm: number): number | null {
  const [onFace, raised] = [spacePointOf(view, at, 0), spacePointOf(view, at, aboveFaceMm)];
  return onFace && raised ? Math.hypot(raised.xMm - onFace.xMm, raised.yMm - onFace.yMm) : null;
}
