import type { Archive } from '../../archive/archive.ts';
import { unwrap } from '../../domain/result.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import type { ExaminationSheet } from '../contract/sexing.ts';
import { latestMeasurementOf, moltedSkinsOf } from './skins.ts';

export function examinationSheetOf(archive: Archive, exuviaId: string): ExaminationSheet {
  const exuvia = unwrap(archive.exuviae.get(exuviaId));
  const molt = unwrap(archive.molts.get(exuvia.moltId));
  const skin = moltedSkinsOf(archive, molt.specimenId).find((candidate) => candidate.molt.id === molt.id);
  const determinations = archive.determinations.ofSpecimen(molt.specimenId);
  return {
    specimen: unwrap(archive.specimens.get(molt.specimenId)),
    molt,
    exuvia,
    photos: skin?.photos.map(({ photo }) => photo) ?? [],
    measurement: skin ? latestMeasurementOf(skin) : null,
    determinations: [...determinations],
    sign: signOf(determinations),
  };
}
