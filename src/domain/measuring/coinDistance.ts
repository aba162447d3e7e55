import { calibrate } from './calibrate.ts';
import type { CoinScale } from './calibration.ts';
import type { PictureFacts } from './camera.ts';

/**
 * From where a skin is photographed: a phone does not focus nearer than some 3 cm, and from above 3 m a skin is a few pixels wide.
 * Common practice, no source.
 */
const BELIEVED_HEIGHT_MM = { least: 30, most: 3_000 } as const;
/** The same where no focal length tells the height: no coin fits in a picture of 1 cm, and no table is longer than 3 m. Our judgment. */
const BELIEVED_PICTURE_MM = { least: 10, most: 3_000 } as const;

/** What the diameter stated for a coin makes of the picture, where that cannot quite be believed. */
export type CoinDistanceDoubt =
  | { readonly code: 'camera-height'; readonly heightMm: number }
  | { readonly code: 'picture-length'; readonly longerSideMm: number };

/** Looks whether the diameter of a coin puts the camera where nobody photographs from; null where it does not, or nothing can be told. */
export function doubtAboutCoin(marks: CoinScale, picture: PictureFacts): CoinDistanceDoubt | null {
  const calibration = calibrate(marks, picture);
  if (!calibration.ok) return null;
  const { station, mmPerPxAtCenter } = calibration.value;
  if (station !== null)
    return isWithin(station.heightMm, BELIEVED_HEIGHT_MM) ? null : { code: 'camera-height', heightMm: station.heightMm };
  if (mmPerPxAtCenter === null) return null;
  const longerSideMm = mmPerPxAtCenter * Math.max(picture.widthPx, picture.heightPx);
  return isWithin(longerSideMm, BELIEVED_PICTURE_MM) ? null : { code: 'picture-length', longerSideMm };
}

function isWithin(lengthMm: number, { least, most }: { readonly least: number; readonly most: number }): boolean {
  return lengthMm >= least && lengthMm <= most;
}
