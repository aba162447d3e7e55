import { calibrate } from '../measuring/calibrate.ts';
import type { CalibrationRecord } from '../measuring/calibration.ts';
import type { Reading } from '../measuring/reading.ts';
import type { Photo } from '../photo/photo.ts';
import { type Plate, plateOf } from './plate.ts';

/** A photo with what brings it to scale. */
export interface PlatedPhoto {
  readonly photo: Photo;
  readonly calibration: CalibrationRecord;
  /** Says which way the animal lies and how far it reaches; null where nothing is marked. */
  readonly reading: Reading | null;
}

/** Why a photo cannot be brought to the common scale. */
export type OffScaleReason = 'no-scale-marked' | 'marks-do-not-fit' | 'seen-too-flat';

export type PlatedResult = { readonly plate: Plate } | { readonly reason: OffScaleReason };

/** The plate of a photo by its scale object and its landmarks. */
export function platePhoto({ photo, calibration, reading }: PlatedPhoto): PlatedResult {
  if (!calibration.marks) return { reason: 'no-scale-marked' };
  const calibrated = calibrate(calibration.marks, photo);
  if (!calibrated.ok) return { reason: 'marks-do-not-fit' };
  const plate = plateOf(photo, calibrated.value.view, reading?.landmarks ?? null);
  return plate ? { plate } : { reason: 'seen-too-flat' };
}

/** Raised whenever the same marks would be cut another way. */
const CUT_VERSION = 2;

/** Names what a prepared cut of a photo follows from: another scale or other landmarks make another cut. */
export function cutKeyOf({ calibration, reading }: Pick<PlatedPhoto, 'calibration' | 'reading'>): string {
  return [CUT_VERSION, calibration.version, ...(reading ? [reading.id, reading.version] : [])].join('-');
}
