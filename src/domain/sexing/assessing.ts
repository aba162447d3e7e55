import type { Determination, DeterminationDraft, ReadingMethod, SignedAssessment, SignedGenus } from './determination.ts';
import { caseOf } from './evidence/caseOf.ts';
import type { EvidenceModel } from './evidence/model.ts';
import { sizeClassOfSkin } from './evidence/skinFindings.ts';
import { weigh } from './evidence/weigh.ts';
import type { GenusProfile } from './genus/profile.ts';
import type { LiveSign } from './live/liveSign.ts';
import { photosOf } from './pins.ts';
import type { SkinInOrder } from './skinsInOrder.ts';

interface Known {
  readonly exuviaId: string;
  readonly genus: GenusProfile;
  readonly model: EvidenceModel;
  readonly determinations: readonly Determination[];
  readonly liveSigns: readonly LiveSign[];
  readonly animalPhotoIds: ReadonlySet<string>;
  readonly skinsInOrder: readonly SkinInOrder[];
}

/** How a skin was read. A reading that rests on the animal alone, with no answer about the strip, is of the animal. */
export function methodOf({ checklist }: Pick<DeterminationDraft, 'checklist'>): ReadingMethod {
  const stripAnswered = [
    checklist.receptaclesSeen,
    checklist.uterusExternusSeen,
    checklist.accessoryOrgansSeen,
    checklist.fusillaeOutsideSeen,
  ].some((answer) => answer === 'yes' || answer === 'no');
  if (!stripAnswered && (checklist.palpalBulbsOnAnimal === 'yes' || checklist.eggSacLaid === 'yes')) return 'animal';
  return checklist.magnification === null ? 'skin-unstated' : `skin-${checklist.magnification}`;
}

/** What the machine makes of a reading and of everything else on record, to be kept with the signature. */
export function assessmentOf(draft: DeterminationDraft, known: Known): SignedAssessment {
  const { exuviaId, model, ...onRecord } = known;
  const { genus } = known;
  const photographed = photosOf('palpalBulbsOnAnimal', draft).some((id) => known.animalPhotoIds.has(id));
  const inHand = { exuviaId, checklist: draft.checklist, readOn: draft.readOn, replaces: draft.supersedes, photographed };
  const { towards, band, conflict } = weigh(caseOf({ ...onRecord, inHand }), model);
  return {
    modelVersion: model.version,
    method: methodOf(draft),
    sizeClass: sizeClassOfSkin(draft.checklist, genus, model.numbers),
    towards,
    band,
    conflict,
    genus: signedGenus(genus),
  };
}

function signedGenus({ genus, flags, version, hooks, adultCarapaceMm, earlyColorBasis }: GenusProfile): SignedGenus {
  return { genus, ...flags, profileVersion: version, hooks: hooks.state, adultCarapaceMm, earlyColorKnown: earlyColorBasis !== null };
}
