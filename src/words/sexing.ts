import type { StripAnswer } from '../domain/sexing/determination.ts';
import type { LevelReason } from '../domain/sexing/reason.ts';
import { listed } from './counts.ts';

/** What would have to be there for the next level, as it stands after "Still needed:". */
export const NEED_WORDS: Readonly<Record<LevelReason, string>> = {
  'skin-not-matched': 'certainty that the skin is this animal’s',
  'strip-not-readable': 'a strip that can be read (grade A to C)',
  'grade-below-a': 'a strip of grade A',
  'grade-below-b': 'a strip of grade A or B',
  'book-lungs-not-found': 'all four book lungs found, so that the place is certain',
  'inner-side-not-viewed': 'a look at the inner side',
  'outer-side-not-viewed': 'a look at the outer side as well',
  'size-unknown': 'the leg span or the carapace of this skin',
  'skin-small': 'a larger skin',
  'receptacles-not-seen': 'receptacles seen',
  'receptacles-not-read-as-absent': 'a strip read as empty',
  'uterus-externus-not-seen': 'the uterus externus seen',
  'uterus-externus-absent': 'a uterus externus with the receptacles (it was read as absent)',
  'accessory-organs-seen': 'no accessory organs (they were seen)',
  'accessory-organs-not-seen': 'accessory organs seen',
  'fusillae-not-seen': 'fusillae seen on the outer side',
  'female-sign-seen': 'no sign of a female (one was seen)',
  'male-sign-seen': 'no sign of a male (one was seen)',
  'bulbs-not-seen': 'palpal bulbs seen on the animal',
  'bulbs-photo-missing': 'a photo of the animal with its bulbs, chosen as evidence',
  'egg-sac-not-laid': 'an egg sac laid',
  'genus-without-spermathecae': 'other evidence than receptacles (females of this genus have none)',
  'genus-weakly-sclerotized': 'other evidence than an empty strip (receptacles of this genus are easily overlooked)',
  'genus-with-accessory-organs': 'the uterus externus seen (males of this genus carry look-alikes)',
  'second-reader-disagrees': 'readers who agree (the second one does not)',
  'second-skin-missing': 'another skin that shows the same as clearly',
  'successive-skin-missing': 'the skin before or after, read the same way',
  'leg-span-unknown': 'the leg span of this skin',
  'leg-span-small': 'a skin of larger leg span',
  'fusillae-not-read-as-absent': 'fusillae looked for and absent',
  'evidence-too-weak': 'weightier evidence than these answers give',
};

/** What each question about the strip is called inside a sentence. */
export const STRIP_WORDS: Readonly<Record<StripAnswer, string>> = {
  receptaclesSeen: 'receptacles',
  flapLifts: 'a flap that lifts',
  uterusExternusSeen: 'uterus externus',
  lowerLipSeen: 'lower lip',
  accessoryOrgansSeen: 'accessory organs',
  fusillaeOutsideSeen: 'fusillae',
};

/** The two nearest ways to a level, as one phrase: "a, b and c; or d". */
export function needsInWords(ways: readonly (readonly LevelReason[])[]): string {
  return ways
    .slice(0, 2)
    .map((way) => listed(way.map((reason) => NEED_WORDS[reason])))
    .join('; or ');
}
