import type { Archive } from '../../archive/archive.ts';
import { instarOfSkin } from '../../domain/molting/instars.ts';
import type { PhotoSubject } from '../../domain/photo/photo.ts';
import { unwrap } from '../../domain/result.ts';
import type { BenchSheet } from '../contract/bench.ts';
import { moltedSkinsOf, skinSizesOf } from './skins.ts';

export function benchSheetOf(archive: Archive, photoId: string): BenchSheet {
  const photo = unwrap(archive.photos.get(photoId));
  return {
    photo,
    calibration: unwrap(archive.calibrations.get(photoId)),
    readings: [...archive.readings.ofPhoto(photoId)],
    ...shownBy(archive, photo.subject),
  };
}

type Shown = Pick<BenchSheet, 'specimen' | 'instar' | 'skinSizes'>;

/** Whose photo it is. Only a skin has an instar that was shed; the animal in a photo is in a later one. */
function shownBy(archive: Archive, subject: PhotoSubject): Shown {
  if (subject.kind === 'none') return { specimen: null, instar: null, skinSizes: null };
  if (subject.kind === 'animal') return { specimen: nameOf(archive, subject.specimenId), instar: null, skinSizes: null };
  const { moltId } = unwrap(archive.exuviae.get(subject.exuviaId));
  const { specimenId } = unwrap(archive.molts.get(moltId));
  const skins = moltedSkinsOf(archive, specimenId);
  const skin = skins.find(({ molt }) => molt.id === moltId);
  return {
    specimen: nameOf(archive, specimenId),
    instar: instarOfSkin(
      moltId,
      skins.map(({ molt }) => molt),
      unwrap(archive.specimens.get(specimenId)),
    ),
    skinSizes: skin ? skinSizesOf(skin) : null,
  };
}

function nameOf(archive: Archive, specimenId: string): NonNullable<BenchSheet['specimen']> {
  const { id, code, taxon, name } = unwrap(archive.specimens.get(specimenId));
  return { id, code, taxon, name };
}
