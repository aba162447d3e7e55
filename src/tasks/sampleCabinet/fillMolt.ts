import { checkAcquisition } from '../../domain/molting/acquisition.ts';
import { checkRecovery } from '../../domain/molting/outcomes.ts';
import { checkMolt } from '../../domain/molting/sequence.ts';
import { unwrap } from '../../domain/result.ts';
import { assessmentOf } from '../../domain/sexing/assessing.ts';
import { modelAfter } from '../../domain/sexing/evidence/model.ts';
import type { GenusProfile } from '../../domain/sexing/genus/profile.ts';
import { checkDetermination } from '../../domain/sexing/signing.ts';
import { skinsInOrderOf } from '../../domain/sexing/skinsInOrder.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import type { SampleDetermination, SampleMolt } from './data.ts';
import { type Filling, fillPhoto, photoIdOf } from './filling.ts';

interface OfAnimal {
  readonly specimen: Specimen;
  readonly genus: GenusProfile;
  /** Records what was seen of the animal itself up to a day. */
  readonly signsUntil: (offset: number) => void;
}

/** One molt with its skin, the pictures of that and what was read on it. */
export function fillMolt(filling: Filling, entry: SampleMolt, animal: OfAnimal): void {
  const { archive, dayOf } = filling;
  const { specimen, signsUntil } = animal;
  const dated = { ...entry.molt, happenedFrom: dayOf(entry.molt.happenedFrom), happenedTo: dayOf(entry.molt.happenedTo) };
  const molts = archive.molts.ofSpecimen(specimen.id);
  const draft = unwrap(checkMolt(dated, { molts, replacing: null, today: dayOf(0) }));
  unwrap(checkAcquisition(specimen, [...molts, draft]));
  const molt = unwrap(archive.molts.create(specimen.id, draft));
  if (entry.exuvia === null) return;
  unwrap(checkRecovery(molt.id, molt.outcomes, entry.exuvia.recovered));
  const exuvia = unwrap(archive.exuviae.create(molt.id, entry.exuvia));
  for (const photo of entry.photos) fillPhoto(filling, photo, { kind: 'skin', exuviaId: exuvia.id });
  for (const determination of entry.determinations) {
    signsUntil(determination.readOn);
    fillDetermination(filling, determination, { animal, exuviaId: exuvia.id, shedFrom: molt.happenedFrom });
  }
}

function fillDetermination(
  filling: Filling,
  { evidence, pins, withdrawnBecause, ...known }: SampleDetermination,
  { animal, exuviaId, shedFrom }: { readonly animal: OfAnimal; readonly exuviaId: string; readonly shedFrom: string },
): void {
  const { archive, dayOf } = filling;
  const specimenId = animal.specimen.id;
  const skinPhotos = archive.photos.ofSkinsOf(specimenId);
  const animalPhotos = archive.photos.ofAnimal(specimenId);
  const animalPhotoIds = new Set(animalPhotos.map(({ id }) => id));
  const signing = {
    exuviaId,
    shedFrom,
    genus: animal.genus,
    model: modelAfter(archive.modelChanges.list()),
    // Molts are filled in oldest first: later ones are not yet there.
    skinsInOrder: skinsInOrderOf(archive.molts.ofSpecimen(specimenId), archive.exuviae.ofSpecimen(specimenId)),
    determinations: archive.determinations.ofSpecimen(specimenId),
    liveSigns: archive.liveSigns.ofSpecimen(specimenId),
    today: dayOf(0),
    skinPhotoIds: new Set(skinPhotos.map(({ id }) => id)),
    animalPhotoIds,
    photoSizes: new Map([...skinPhotos, ...animalPhotos].map((photo) => [photo.id, photo])),
  };
  const draft = {
    ...known,
    readOn: dayOf(known.readOn),
    evidencePhotoIds: evidence.map((file) => photoIdOf(file, filling)),
    pins: pins.map(({ file, ...pin }) => ({ ...pin, photoId: photoIdOf(file, filling) })),
    supersedes: null,
  };
  const checked = unwrap(checkDetermination(draft, signing));
  const signed = unwrap(archive.determinations.sign(exuviaId, checked, assessmentOf(checked, signing)));
  if (withdrawnBecause !== null) unwrap(archive.determinations.withdraw(signed.id, withdrawnBecause));
}
