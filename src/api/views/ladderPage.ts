import type { Archive } from '../../archive/archive.ts';
import { buildLadder, type MoltOnRecord } from '../../domain/growth/ladder.ts';
import { instarNowOf } from '../../domain/molting/instars.ts';
import { unwrap } from '../../domain/result.ts';
import type { GalleryItem, LadderPage } from '../contract/growth.ts';
import { type MoltedSkin, moltedSkinsOf, readingsOf } from './skins.ts';

export function ladderPageOf(archive: Archive, specimenId: string): LadderPage {
  const specimen = unwrap(archive.specimens.get(specimenId));
  const skins = moltedSkinsOf(archive, specimenId);
  const ladder = buildLadder(skins.map(onRecord), specimen);
  const shown = new Set(ladder.rungs.map((rung) => rung.photoId));
  const gallery = skins.flatMap((skin) => galleryItemsOf(archive, skin).filter((item) => shown.has(item.photo.id)));
  const instarNow = instarNowOf(
    skins.map(({ molt }) => molt),
    specimen,
  );
  return { specimen, instarNow, ladder, gallery };
}

/** A molted skin as the ladder takes it. */
export function onRecord(skin: MoltedSkin): MoltOnRecord {
  return { molt: skin.molt, exuvia: skin.exuvia, photos: skin.photos.map(({ photo }) => photo), readings: readingsOf(skin) };
}

function galleryItemsOf(archive: Archive, skin: MoltedSkin): GalleryItem[] {
  return skin.photos.map(({ photo, calibration, readings }) => ({
    moltId: skin.molt.id,
    photo,
    calibration: calibration ?? unwrap(archive.calibrations.get(photo.id)),
    reading: readings.at(-1)?.reading ?? null,
  }));
}
