import type { Archive } from '../../archive/archive.ts';
import { scattersOf } from '../../domain/agreement/pointing.ts';
import { instarOfSkin } from '../../domain/molting/instars.ts';
import type { PhotoSubject } from '../../domain/photo/photo.ts';
import { unwrap } from '../../domain/result.ts';
import type { BenchSheet } from '../contract/bench.ts';

export function benchSheetOf(archive: Archive, photoId: string): BenchSheet {
  const photo = unwrap(archive.photos.get(photoId));
  return {
    photo,
    calibration: unwrap(archive.calibrations.get(photoId)),
    readings: [...archive.readings.ofPhoto(photoId)],
    repeatsElsewhere: scattersOf(archive.readings.repeated().filter((reading) => reading.photoId !== photoId)),
    ...shownBy(archive, photo.subject),
  };
}

/** Whose photo it is. Only a skin has an instar that was shed; the animal in a photo is in a later one. */
function shownBy(archive: Archive, subject: PhotoSubject): Pick<BenchSheet, 'specimen' | 'instar'> {
  if (subject.kind === 'none') return { specimen: null, instar: null };
  if (subject.kind === 'animal') return { specimen: nameOf(archive, subject.specimenId), instar: null };
  const { moltId } = unwrap(archive.exuviae.get(subject.exuviaId));
  const { specimenId } = unwrap(archive.molts.get(moltId));
  const acquisition = unwrap(archive.specimens.get(specimenId));
  return { specimen: nameOf(archive, specimenId), instar: instarOfSkin(moltId, archive.molts.ofSpecimen(specimenId), acquisition) };
}

function nameOf(archive: Archive, specimenId: string): NonNullable<BenchSheet['specimen']> {
  const { id, code, taxon, name, sample } = unwrap(archive.specimens.get(specimenId));
  return { id, code, taxon, name, sample };
}
