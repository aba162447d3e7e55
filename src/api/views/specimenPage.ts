import type { Archive } from '../../archive/archive.ts';
import { unwrap } from '../../domain/result.ts';
import type { SpecimenPage } from '../contract/specimens.ts';
import { latestMeasurementOf, moltedSkinsOf } from './skins.ts';
import { summaryOf } from './summary.ts';

export function specimenPageOf(archive: Archive, specimenId: string): SpecimenPage {
  const entry = unwrap(archive.cabinet.entry(specimenId));
  const determinations = Map.groupBy(entry.determinations, (determination) => determination.exuviaId);
  return {
    summary: summaryOf(archive, entry),
    molts: moltedSkinsOf(archive, specimenId).map((skin) => ({
      molt: skin.molt,
      exuvia: skin.exuvia,
      photos: skin.photos.map(({ photo }) => photo),
      measurement: latestMeasurementOf(skin),
      determinations: skin.exuvia ? (determinations.get(skin.exuvia.id) ?? []) : [],
    })),
    animalPhotos: [...archive.photos.ofAnimal(specimenId)],
  };
}
