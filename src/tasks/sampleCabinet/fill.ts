import type { Archive } from '../../archive/archive.ts';
import { refuse } from '../../domain/failure.ts';
import type { PhotoSubject } from '../../domain/photo/photo.ts';
import { type Result, succeed, unwrap } from '../../domain/result.ts';
import type { SampleCabinet, SamplePhoto } from './data.ts';

type PhotoIds = ReadonlyMap<string, string>;

/**
 * Writes the records of the sample cabinet in one transaction, so that the archive holds all of it or none. The photos are
 * already in the archive; `photoIds` says under which id each file of the cabinet is.
 */
export function fillSampleCabinet(archive: Archive, cabinet: SampleCabinet, photoIds: PhotoIds): Result<null> {
  return archive.transaction(() => {
    for (const entry of cabinet.specimens) fillSpecimen(archive, entry, photoIds);
    return succeed(null);
  });
}

function fillSpecimen(archive: Archive, entry: SampleCabinet['specimens'][number], photoIds: PhotoIds): void {
  const specimen = unwrap(archive.specimens.create(entry.specimen, { sample: true }));
  for (const { molt: moltDraft, exuvia: exuviaDraft, photos, determinations } of entry.molts) {
    const molt = unwrap(archive.molts.create(specimen.id, moltDraft));
    const exuvia = unwrap(archive.exuviae.create(molt.id, exuviaDraft));
    for (const photo of photos) fillPhoto(archive, photo, { kind: 'skin', exuviaId: exuvia.id }, photoIds);
    for (const { evidence, withdrawnBecause, ...draft } of determinations) {
      const evidencePhotoIds = evidence.map((file) => photoIdOf(file, photoIds));
      const signed = unwrap(archive.determinations.sign(exuvia.id, { ...draft, evidencePhotoIds, supersedes: null }));
      if (withdrawnBecause !== null) unwrap(archive.determinations.withdraw(signed.id, withdrawnBecause));
    }
  }
  for (const photo of entry.animalPhotos) fillPhoto(archive, photo, { kind: 'animal', specimenId: specimen.id }, photoIds);
}

function fillPhoto(archive: Archive, sample: SamplePhoto, subject: PhotoSubject, photoIds: PhotoIds): void {
  const photo = unwrap(archive.photos.get(photoIdOf(sample.file, photoIds)));
  unwrap(archive.photos.update(photo.id, photo.version, { subject, view: sample.view, takenOn: sample.takenOn, notes: sample.notes }));
  if (sample.marks !== null) unwrap(archive.calibrations.put(photo.id, 0, sample.marks));
  if (sample.reading !== null) unwrap(archive.readings.create(photo.id, sample.reading));
}

function photoIdOf(file: string, photoIds: PhotoIds): string {
  return photoIds.get(file) ?? refuse({ code: 'not-found', what: 'photo', id: file });
}
