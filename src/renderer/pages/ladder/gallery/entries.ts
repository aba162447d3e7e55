import type { GalleryItem } from '../../../../api/contract/growth.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import type { Photo } from '../../../../domain/photo/photo.ts';
import type { Plate } from '../../../../domain/plate/plate.ts';
import { type OffScaleReason, platePhoto } from '../../../../domain/plate/platePhoto.ts';
import { gapInWords } from '../../../../words/ladder.ts';

/** What the gallery has for one rung, or for the instars missing before it. */
export type GalleryEntry =
  | { readonly kind: 'gap'; readonly rung: Rung; readonly words: string }
  | { readonly kind: 'plate'; readonly rung: Rung; readonly photo: Photo; readonly plate: Plate; readonly item: GalleryItem }
  | { readonly kind: 'off-scale'; readonly rung: Rung; readonly photo: Photo; readonly reason: OffScaleReason }
  | { readonly kind: 'no-photo'; readonly rung: Rung };

export type PlateEntry = Extract<GalleryEntry, { kind: 'plate' }>;

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

function entryOf(rung: Rung, item: GalleryItem): GalleryEntry {
  const { photo } = item;
  const placed = platePhoto(item);
  return 'plate' in placed
    ? { kind: 'plate', rung, photo, plate: placed.plate, item }
    : { kind: 'off-scale', rung, photo, reason: placed.reason };
}
