import type { Archive } from '../../archive/archive.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import { buildLadder, type MoltOnRecord } from '../../domain/growth/ladder.ts';
import type { Ladder } from '../../domain/growth/rung.ts';
import { cutKeyOf, type PlatedPhoto } from '../../domain/plate/platePhoto.ts';
import { unwrap } from '../../domain/result.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import type { GalleryItem } from '../contract/growth.ts';
import { type MoltedSkin, moltedSkinsOf, readingsOf } from './skins.ts';

/** A skin in the gallery whose cut has not been looked for yet. */
export type GalleryPlace = Omit<GalleryItem, 'cutReady'>;

export interface SkinRow {
  readonly skins: readonly MoltedSkin[];
  readonly records: readonly MoltOnRecord[];
  readonly ladder: Ladder;
  readonly gallery: readonly GalleryPlace[];
}

/** The skins of an animal as rungs and in the gallery, without what growth and kin make of them. */
export function skinRowOf(archive: Archive, specimen: Specimen, pointing: Pointing): SkinRow {
  const skins = moltedSkinsOf(archive, specimen.id, pointing);
  const records = skins.map(onRecord);
  const ladder = buildLadder(records, specimen);
  const shown = new Set(ladder.rungs.map((rung) => rung.photoId));
  const gallery = skins.flatMap((skin) => galleryItemsOf(archive, skin).filter((item) => shown.has(item.photo.id)));
  return { skins, records, ladder, gallery };
}

/** A molted skin as the ladder takes it. */
function onRecord(skin: MoltedSkin): MoltOnRecord {
  return { molt: skin.molt, exuvia: skin.exuvia, photos: skin.photos.map(({ photo }) => photo), readings: readingsOf(skin) };
}

/** A photo with its marks as the gallery takes it; of several passes the last. */
export function platedPhotoOf(archive: Archive, photoId: string): PlatedPhoto {
  const photo = unwrap(archive.photos.get(photoId));
  const calibration = unwrap(archive.calibrations.get(photoId));
  return { photo, calibration, reading: archive.readings.ofPhoto(photoId).at(-1) ?? null };
}

function galleryItemsOf(archive: Archive, skin: MoltedSkin): GalleryPlace[] {
  return skin.photos.map(({ photo, calibration, readings }) => {
    const plated = {
      photo,
      calibration: calibration ?? unwrap(archive.calibrations.get(photo.id)),
      reading: readings.at(-1)?.reading ?? null,
    };
    return { moltId: skin.molt.id, ...plated, cutKey: cutKeyOf(plated) };
  });
}
