import type { GalleryItem } from '../../../../api/contract/growth.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { calibrate } from '../../../../domain/measuring/calibrate.ts';
import type { Photo } from '../../../../domain/photo/photo.ts';
import { gapInWords } from '../../../../words/ladder.ts';
import { type Plate, plateOf } from './plate.ts';

/** Why a photo cannot be brought to the common scale. */
export type OffScaleReason = 'no-scale-marked' | 'marks-do-not-fit' | 'seen-too-flat';

/** What the gallery has for one rung, or for the instars missing before it. */
export type GalleryEntry =
  | { readonly kind: 'gap'; readonly rung: Rung; readonly words: string }
  | { readonly kind: 'plate'; readonly rung: Rung; readonly photo: Photo; readonly plate: Plate }
  | { readonly kind: 'off-scale'; readonly rung: Rung; readonly photo: Photo; readonly reason: OffScaleReason }
  | { readonly kind: 'no-photo'; readonly rung: Rung };

export function galleryEntries(rungs: readonly Rung[], items: readonly GalleryItem[]): GalleryEntry[] {
  return rungs.flatMap((rung, index) => {
    const previous = rungs[index - 1];
    // Instars between the acquisition and the first skin are told in the table: before the first there is no row to interrupt.
    const gap = previous ? gapInWords(rung, previous) : null;
    const own = items.filter(({ moltId }) => moltId === rung.moltId);
    const item = own.find(({ photo }) => photo.id === rung.photoId) ?? own[0];
    const entry: GalleryEntry = item ? entryOf(rung, item) : { kind: 'no-photo', rung };
    return gap ? [{ kind: 'gap', rung, words: gap }, entry] : [entry];
  });
}

function entryOf(rung: Rung, { photo, calibration, reading }: GalleryItem): GalleryEntry {
  const offScale = (reason: OffScaleReason): GalleryEntry => ({ kind: 'off-scale', rung, photo, reason });
  if (!calibration.marks) return offScale('no-scale-marked');
  const calibrated = calibrate(calibration.marks, photo);
  if (!calibrated.ok) return offScale('marks-do-not-fit');
  const plate = plateOf(photo, calibrated.value.view.imageToPlane, reading?.landmarks ?? null);
  return plate ? { kind: 'plate', rung, photo, plate } : offScale('seen-too-flat');
}
