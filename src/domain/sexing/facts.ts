import type { CalendarDay } from '../dates.ts';
import type { Checklist, Determination } from './determination.ts';
import type { EvidenceModel } from './evidence/model.ts';
import type { ModelNumbers } from './evidence/numbers.ts';
import type { GenusKnown } from './evidence/skinFindings.ts';
import type { GenusFlags } from './genus/profile.ts';
import type { LiveSign } from './live/liveSign.ts';
import { provedBy, type Shown, shownBy } from './live/shown.ts';
import { isFirm } from './rank.ts';
import { areSuccessive, type SkinInOrder } from './skinsInOrder.ts';
import { standingOf } from './standing.ts';

/** Everything an assessment looks at. */
export interface Examined {
  readonly checklist: Checklist;
  readonly reader: string;
  readonly readOn: CalendarDay;
  readonly genus: GenusKnown;
  readonly model: EvidenceModel;
  readonly exuviaId: string;
  /** Of all molts of the animal, oldest first. */
  readonly skinsInOrder: readonly SkinInOrder[];
  /** All determinations of the animal, of any skin and standing. */
  readonly determinations: readonly Determination[];
  /** What was recorded of the animal itself. */
  readonly liveSigns: readonly LiveSign[];
  /** Photos of the animal itself, and how many of them are evidence of this reading that may show its bulbs. */
  readonly animalPhotoIds: ReadonlySet<string>;
  readonly animalPhotoCount: number;
}

/** What the answers come to. `cannot-tell` and `not-looked` are neither seen nor absent. */
export interface Facts {
  readonly checklist: Checklist;
  readonly genus: GenusFlags;
  /** By a photo of the animal that is evidence of this reading, or of whatever else says so. */
  readonly bulbsPhotographed: boolean;
  /** By the leg span and the carapace that the numbers of the model call so, the worse of them; null while neither is known. */
  readonly large: boolean | null;
  /** The strip was there to be read: graded, and not D. */
  readonly readable: boolean;
  /** Receptacles seen on a readable strip. */
  readonly receptaclesSeen: boolean;
  /** The readable strip was read as empty from the inner side, in a genus whose females are known to have receptacles. */
  readonly emptyStripWeighs: boolean;
  /** Only something seen contradicts: an empty strip never does. */
  readonly femaleSignSeen: boolean;
  readonly maleSignSeen: boolean;
  /** Another skin of the animal shows receptacles with the uterus externus as clearly as an established female needs. */
  readonly clearFemaleOnOtherSkin: boolean;
  /** The skin before or after this one shows fusillae and an empty strip as clearly as a strong male needs. */
  readonly clearMaleOnNextSkin: boolean;
}

export function factsOf(examined: Examined): Facts {
  const { flags: genus } = examined.genus;
  const { numbers } = examined.model;
  const shown = shownBy(examined, examined.animalPhotoIds);
  const checklist = withShown(examined.checklist, shown);
  const readable = isReadable(checklist);
  const receptaclesSeen = readable && checklist.receptaclesSeen === 'yes';
  const fusillaeSeen = readable && checklist.fusillaeOutsideSeen === 'yes';
  const standing = standingOf(examined.determinations);
  const otherSkins = standing.filter((determination) => determination.exuviaId !== examined.exuviaId);
  return {
    checklist,
    genus,
    bulbsPhotographed: examined.animalPhotoCount > 0 || shown.some((one) => provedBy(one) === 'male' && one.photoIds.length > 0),
    large: isLarge(checklist, numbers),
    readable,
    receptaclesSeen,
    emptyStripWeighs: readable && checklist.receptaclesSeen === 'no' && checklist.view !== 'outside' && !genus.withoutSpermathecae,
    femaleSignSeen:
      checklist.eggSacLaid === 'yes' || (receptaclesSeen && checklist.uterusExternusSeen !== 'no') || (readable && lipSeen(checklist)),
    maleSignSeen: checklist.palpalBulbsOnAnimal === 'yes' || fusillaeSeen,
    clearFemaleOnOtherSkin: otherSkins.some((other) => isClearFemale(other, numbers)),
    clearMaleOnNextSkin: otherSkins.some(
      (other) => isClearMale(other, numbers) && areSuccessive(examined.exuviaId, other.exuviaId, examined.skinsInOrder),
    ),
  };
}

/** What the animal showed counts as if it had been said in this reading. */
function withShown(checklist: Checklist, shown: readonly Shown[]): Checklist {
  const proved = new Set(shown.map(provedBy));
  return { ...checklist, ...(proved.has('male') && { palpalBulbsOnAnimal: 'yes' }), ...(proved.has('female') && { eggSacLaid: 'yes' }) };
}

/** Females have both lips of the opening, males neither; they lie on the inner side. */
function lipSeen({ view, uterusExternusSeen, lowerLipSeen }: Checklist): boolean {
  return view !== 'outside' && (uterusExternusSeen === 'yes' || lowerLipSeen === 'yes');
}

function isReadable(checklist: Checklist): boolean {
  return checklist.grade !== null && checklist.grade !== 'D';
}

function isLarge({ legSpanMm, carapaceLengthMm }: Checklist, numbers: ModelNumbers): boolean | null {
  if (legSpanMm === null && carapaceLengthMm === null) return null;
  const largeSpan = legSpanMm === null || legSpanMm > numbers['span.largeAbove'];
  return largeSpan && (carapaceLengthMm === null || carapaceLengthMm > numbers['carapace.largeAbove']);
}

/** A sign can be "clear" only on the right skin, at the right place, seen from the inner side of a large skin. */
function isWellRead(checklist: Checklist, numbers: ModelNumbers): boolean {
  const innerSide = checklist.view === 'inside' || checklist.view === 'both';
  return (
    checklist.skinMatchesAnimal === 'yes' && checklist.fourBookLungsFound === 'yes' && innerSide && isLarge(checklist, numbers) === true
  );
}

/** Signed as at least probable, so that whatever spoke against it has been weighed already. */
function isClearFemale({ sex, level, checklist }: Determination, numbers: ModelNumbers): boolean {
  const intact = checklist.grade === 'A' || checklist.grade === 'B';
  const seen = checklist.receptaclesSeen === 'yes' && checklist.uterusExternusSeen === 'yes';
  return sex === 'female' && isFirm(level) && isWellRead(checklist, numbers) && intact && seen;
}

function isClearMale({ sex, level, checklist }: Determination, numbers: ModelNumbers): boolean {
  const seen = checklist.receptaclesSeen === 'no' && checklist.fusillaeOutsideSeen === 'yes' && checklist.view === 'both';
  return sex === 'male' && isFirm(level) && isWellRead(checklist, numbers) && checklist.grade === 'A' && seen;
}
