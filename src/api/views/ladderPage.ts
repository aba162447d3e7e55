import type { Archive } from '../../archive/archive.ts';
import { buildLadder, type MoltOnRecord } from '../../domain/growth/ladder.ts';
import { unwrap } from '../../domain/result.ts';
import type { GalleryItem, LadderPage } from '../contract/growth.ts';
import { type MoltedSkin, moltedSkinsOf } from './skins.ts';

export function ladderPageOf(archive: Archive, specimenId: string): LadderPage {
  const specimen = unwrap(archive.specimens.get(specimenId));
  const skins = moltedSkinsOf(archive, specimenId);
  const ladder = buildLadder(skins.map(onRecord));
  const shown = new Set(ladder.rungs.map((rung) => rung.photoId));
  const gallery = skins.flatMap((skin) => galleryItemsOf(archive, skin).filter((item) => shown.has(item.photo.id)));
  return { specimen, ladder, gallery };
}

function onRecord({ molt, exuvia, photos }: MoltedSkin): MoltOnRecord {
  const readings = photos.flatMap(({ photo, readings: measured }) =>
    measured.flatMap(({ reading, measurement }) => (measurement ? [{ readingId: reading.id, photoId: photo.id, measurement }] : [])),
  );
  return { molt, exuvia, photos: photos.map(({ photo }) => photo), readings };
}

function galleryItemsOf(archive: Archive, skin: MoltedSkin): GalleryItem[] {
  return skin.photos.map(({ photo, calibration, readings }) => ({
    moltId: skin.molt.id,
    photo,
    calibration: calibration ?? unwrap(archive.calibrations.get(photo.id)),
    reading: readings.at(-1)?.reading ?? null,
  }));
}
