import type { AnswerOf } from '../../../../api/contract/contract.ts';
import type { UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';
import { caseOf } from '../../../../domain/sexing/evidence/caseOf.ts';
import { numbersWith } from '../../../../domain/sexing/evidence/numbers.ts';
import { type Prospect, prospectsOf } from '../../../../domain/sexing/evidence/prospects.ts';
import { type Weighing, weigh } from '../../../../domain/sexing/evidence/weigh.ts';
import { type Assessment, assessLevel } from '../../../../domain/sexing/levels.ts';
import { photosOf } from '../../../../domain/sexing/pins.ts';
import { examinedBy } from '../../../../domain/sexing/signing.ts';
import { asSigned } from './asSigned.ts';

interface Known {
  readonly sheet: AnswerOf<'GET /api/exuviae/{exuviaId}/examination'>;
  readonly page: AnswerOf<'GET /api/specimens/{specimenId}'>;
  readonly observer: string;
}

export interface Weighed {
  readonly weighing: Weighing;
  readonly prospects: readonly Prospect[];
  readonly assessments: Readonly<Record<'female' | 'male', Assessment>>;
}

/** What a reading comes to together with everything on record: the same arithmetic as where it is signed. */
export function weighedWith(underWay: UnfinishedDetermination, { sheet, page, observer }: Known): Weighed {
  const reading = { ...underWay, checklist: asSigned(underWay.checklist) };
  const { genus, liveSigns, determinations, exuvia } = sheet;
  const model = { version: sheet.model.version, numbers: numbersWith(sheet.model.adjustments) };
  const animalPhotoIds = new Set(page.animalPhotos.map((photo) => photo.id));
  const skinsInOrder = page.molts.map(({ molt, exuvia: skin }) => ({ exuviaId: skin?.id ?? null, shedUntil: molt.happenedTo }));
  const examined = examinedBy(
    { ...reading, reader: reading.reader ?? observer },
    {
      ...{ genus, model, liveSigns, determinations, animalPhotoIds, skinsInOrder, exuviaId: exuvia.id },
    },
  );
  const photographed = photosOf('palpalBulbsOnAnimal', reading).some((id) => animalPhotoIds.has(id));
  const { checklist, readOn, supersedes: replaces } = reading;
  const inHand = { exuviaId: exuvia.id, checklist, readOn, replaces, photographed };
  const evidence = caseOf({ genus, determinations, liveSigns, animalPhotoIds, skinsInOrder, inHand });
  return {
    weighing: weigh(evidence, model),
    prospects: prospectsOf(evidence, exuvia.id, model),
    assessments: { female: assessLevel('female', examined), male: assessLevel('male', examined) },
  };
}
