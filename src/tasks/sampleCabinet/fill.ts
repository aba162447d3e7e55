import type { Archive } from '../../archive/archive.ts';
import { refuse } from '../../domain/failure.ts';
import type { PhotoSubject } from '../../domain/photo/photo.ts';
import { type Result, succeed, unwrap } from '../../domain/result.ts';
import { assessmentOf } from '../../domain/sexing/assessing.ts';
import { modelAfter } from '../../domain/sexing/evidence/model.ts';
import { type GenusBook, profileFor } from '../../domain/sexing/genus/find.ts';
import type { ShippedProfile } from '../../domain/sexing/genus/profile.ts';
import type { SampleCabinet, SamplePhoto } from './data.ts';

type PhotoIds = ReadonlyMap<string, string>;

/**
 * Writes the records of the sample cabinet in one transaction, so that the archive holds all of it or none. The photos are
 * already in the archive; `photoIds` says under which id each file of the cabinet is.
 */
export function fillSampleCabinet(
  archive: Archive,
  cabinet: SampleCabinet,
  { photoIds, genera }: { readonly photoIds: PhotoIds; readonly genera: readonly ShippedProfile[] },
): Result<null> {
  const book: GenusBook = { shipped: genera, edits: archive.genusEdits.list() };
  return archive.transaction(() => {
    for (const entry of cabinet.specimens) fillSpecimen(archive, entry, { photoIds, book });
    return succeed(null);
  });
}

function fillSpecimen(
  archive: Archive,
  entry: SampleCabinet['specimens'][number],
  { photoIds, book }: { readonly photoIds: PhotoIds; readonly book: GenusBook },
): void {
  const specimen = unwrap(archive.specimens.create(entry.specimen, { sample: true }));
  for (const { molt: moltDraft, exuvia: exuviaDraft, photos, determinations } of entry.molts) {
    const molt = unwrap(archive.molts.create(specimen.id, moltDraft));
    const exuvia = unwrap(archive.exuviae.create(molt.id, exuviaDraft));
    for (const photo of photos) fillPhoto(archive, photo, { kind: 'skin', exuviaId: exuvia.id }, photoIds);
    for (const { evidence, withdrawnBecause, ...draft } of determinations) {
      const evidencePhotoIds = evidence.map((file) => photoIdOf(file, photoIds));
      const complete = { ...draft, evidencePhotoIds, supersedes: null };
      const assessment = assessmentOf(complete, {
        exuviaId: exuvia.id,
        genus: profileFor(entry.specimen.taxon, book),
        model: modelAfter(archive.modelChanges.list()),
        determinations: archive.determinations.ofSpecimen(specimen.id),
        liveSigns: [],
        animalPhotoIds: new Set(entry.animalPhotos.map(({ file }) => photoIdOf(file, photoIds))),
      });
      const signed = unwrap(archive.determinations.sign(exuvia.id, complete, assessment));
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
