import type { Archive } from '../../archive/archive.ts';
import { instarOfSkin } from '../../domain/molting/instars.ts';
import { unwrap } from '../../domain/result.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import type { ExaminationSheet } from '../contract/sexing.ts';
import { moltedSkinsOf, skinSizesOf } from './skins.ts';

export function examinationSheetOf(archive: Archive, exuviaId: string): ExaminationSheet {
  const exuvia = unwrap(archive.exuviae.get(exuviaId));
  const molt = unwrap(archive.molts.get(exuvia.moltId));
  const specimen = unwrap(archive.specimens.get(molt.specimenId));
  const skin = moltedSkinsOf(archive, molt.specimenId).find((candidate) => candidate.molt.id === molt.id);
  const determinations = archive.determinations.ofSpecimen(molt.specimenId);
  return {
    specimen,
    molt,
    exuvia,
    photos: skin?.photos.map(({ photo }) => photo) ?? [],
    instar: instarOfSkin(molt.id, archive.molts.ofSpecimen(molt.specimenId), specimen),
    legSpanMm: skin ? skinSizesOf(skin).legSpanMm : null,
    determinations: [...determinations],
    sign: signOf(determinations),
  };
}
