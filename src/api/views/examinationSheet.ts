import { instarOfSkin } from '../../domain/molting/instars.ts';
import { unwrap } from '../../domain/result.ts';
import { fatesOf } from '../../domain/sexing/later.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import type { ExaminationSheet } from '../contract/sexing.ts';
import { animalSignsOf } from './animalSigns.ts';
import { evidenceViewOf } from './evidenceView.ts';
import { pointingIn } from './pointing.ts';
import { referenceSkinsOf } from './referenceSkins.ts';
import { genusProfileOf, modelInForce, type SexingContext, skinsOnRecord } from './sexingKnown.ts';
import { abdomenDistancesIn, moltedSkinsOf, skinSizesOf } from './skins.ts';

export function examinationSheetOf(context: SexingContext, exuviaId: string): ExaminationSheet {
  const { archive } = context;
  const exuvia = unwrap(archive.exuviae.get(exuviaId));
  const molt = unwrap(archive.molts.get(exuvia.moltId));
  const specimen = unwrap(archive.specimens.get(molt.specimenId));
  const skin = moltedSkinsOf(archive, molt.specimenId, pointingIn(archive)).find((candidate) => candidate.molt.id === molt.id);
  const sizes = skin ? skinSizesOf(skin) : null;
  const determinations = archive.determinations.ofSpecimen(molt.specimenId);
  const liveSigns = animalSignsOf(archive, molt.specimenId);
  const animalPhotoIds = new Set(archive.photos.ofAnimal(molt.specimenId).map(({ id }) => id));
  const genus = genusProfileOf(context, specimen);
  const model = modelInForce(context);
  return {
    specimen,
    molt,
    exuvia,
    photos: skin?.photos.map(({ photo }) => photo) ?? [],
    instar: instarOfSkin(molt.id, archive.molts.ofSpecimen(molt.specimenId), specimen),
    legSpanMm: sizes?.legSpanMm ?? null,
    carapaceLengthMm: sizes?.carapaceLengthMm ?? null,
    distances: skin ? abdomenDistancesIn(skin) : [],
    determinations: [...determinations],
    fates: fatesOf(determinations, liveSigns),
    liveSigns: [...liveSigns],
    sign: signOf(determinations, liveSigns),
    genus,
    model: { version: model.version, adjustments: archive.modelChanges.list().at(-1)?.adjustments ?? {} },
    evidence: evidenceViewOf(
      { genus, determinations, liveSigns, animalPhotoIds, skinsInOrder: skinsOnRecord(context, molt.specimenId) },
      exuviaId,
      model,
    ),
    underWay: unwrap(archive.readingsUnderWay.get(exuviaId)),
    references: referenceSkinsOf(context, specimen, genus),
  };
}
