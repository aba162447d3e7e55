import type { Archive } from '../../archive/archive.ts';
import { instarsOfSkins } from '../../domain/molting/instars.ts';
import type { PhotoSubject } from '../../domain/photo/photo.ts';
import type { BenchCandidate } from '../contract/bench.ts';

type Shown = Pick<BenchCandidate, 'specimen' | 'instar'>;

/** Every photo the Bench can lay out; read in a fixed number of statements, however many there are. */
export function benchCandidatesOf(archive: Archive): BenchCandidate[] {
  const entries = archive.cabinet.entries();
  const animals = new Map(entries.map(({ specimen: { id, code, taxon, name, sample } }) => [id, { id, code, taxon, name, sample }]));
  const shed = new Map(
    entries.flatMap(({ specimen, molts }) => {
      const instars = instarsOfSkins(molts, specimen);
      return molts.map((molt, index) => [molt.id, { specimenId: specimen.id, instar: instars[index] ?? null }] as const);
    }),
  );
  const moltOfSkin = new Map(archive.exuviae.list().map((exuvia) => [exuvia.id, shed.get(exuvia.moltId)]));
  const measured = archive.readings.measuredPhotoIds('anything');

  const shownBy = (subject: PhotoSubject): Shown => {
    if (subject.kind === 'none') return { specimen: null, instar: null };
    if (subject.kind === 'animal') return { specimen: animals.get(subject.specimenId) ?? null, instar: null };
    const molt = moltOfSkin.get(subject.exuviaId);
    return { specimen: animals.get(molt?.specimenId ?? '') ?? null, instar: molt?.instar ?? null };
  };
  return archive.photos
    .list({ unassigned: false })
    .map((photo) => ({ photo, ...shownBy(photo.subject), measured: measured.has(photo.id) }));
}
