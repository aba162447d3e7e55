import type { Archive } from '../../archive/archive.ts';
import { type LifeRecords, lifeLineOf } from '../../domain/care/lifeLine.ts';
import type { CalendarDay } from '../../domain/dates.ts';
import { forecastFrom } from '../../domain/growth/forecast/forecast.ts';
import { instarsOfSkins } from '../../domain/molting/instars.ts';
import { unwrap } from '../../domain/result.ts';
import { instantOfCamera, keepersDay } from '../../tasks/localTime.ts';
import type { SpecimenPage } from '../contract/specimens.ts';
import { basisOf } from './forecasts.ts';
import { pointingIn } from './pointing.ts';
import { type MoltedSkin, moltedSkinsOf, skinSizesOf } from './skins.ts';
import { summaryOf } from './summary.ts';

export function specimenPageOf(archive: Archive, specimenId: string, today: CalendarDay): SpecimenPage {
  const entry = unwrap(archive.cabinet.entry(specimenId));
  const pointing = pointingIn(archive);
  const basis = basisOf(archive, entry.specimen, today, pointing);
  const forecast = basis && forecastFrom(basis);
  const instars = instarsOfSkins(entry.molts, entry.specimen);
  const determinations = Map.groupBy(entry.determinations, (determination) => determination.exuviaId);
  const animalPhotos = [...archive.photos.ofAnimal(specimenId)];
  const observations = [...archive.observations.ofSpecimen(specimenId)];
  const liveSigns = [...archive.liveSigns.ofSpecimen(specimenId)];
  const skins = moltedSkinsOf(archive, specimenId, pointing);
  return {
    summary: summaryOf(entry, pointing, forecast?.due ?? null),
    molts: skins.map((skin, index) => ({
      molt: skin.molt,
      exuvia: skin.exuvia,
      photos: skin.photos.map(({ photo }) => photo),
      instar: instars[index] ?? null,
      sizes: skinSizesOf(skin),
      determinations: skin.exuvia ? (determinations.get(skin.exuvia.id) ?? []) : [],
    })),
    animalPhotos,
    observations,
    liveSigns,
    forecast,
    lifeLine: lifeLineOf({
      specimen: entry.specimen,
      molts: entry.molts,
      skins: archive.exuviae.ofSpecimen(specimenId),
      animalPhotos,
      liveSigns,
      readings: skins.flatMap(readingsOnLine),
      determinations: entry.determinations,
      observations,
      dayOfInstant: keepersDay,
      instantOfCamera,
    }),
  };
}

function readingsOnLine({ exuvia, photos }: MoltedSkin): LifeRecords['readings'] {
  if (!exuvia) return [];
  return photos.flatMap(({ readings }) => readings.map(({ reading }) => ({ ...reading, exuviaId: exuvia.id })));
}
