import type { Facts } from './facts.ts';
import type { LevelReason } from './reason.ts';

/** One condition of a level: null when it is met, else the reason why not. */
export type Requirement = (facts: Facts) => LevelReason | null;

function unless(met: (facts: Facts) => boolean, reason: LevelReason): Requirement {
  return (facts) => (met(facts) ? null : reason);
}

// Whose skin, and how well it could be read

export const skinMatches = unless(({ checklist }) => checklist.skinMatchesAnimal === 'yes', 'skin-not-matched');
export const stripReadable = unless((facts) => facts.readable, 'strip-not-readable');
export const gradeA = unless(({ checklist }) => checklist.grade === 'A', 'grade-below-a');
export const gradeAOrB = unless(({ checklist }) => checklist.grade === 'A' || checklist.grade === 'B', 'grade-below-b');
export const bookLungsFound = unless(({ checklist }) => checklist.fourBookLungsFound === 'yes', 'book-lungs-not-found');
export const innerSideViewed = unless(({ checklist }) => checklist.view === 'inside' || checklist.view === 'both', 'inner-side-not-viewed');
export const outerSideViewed = unless(
  ({ checklist }) => checklist.view === 'outside' || checklist.view === 'both',
  'outer-side-not-viewed',
);

export const large: Requirement = (facts) => {
  if (facts.large === null) return 'size-unknown';
  return facts.large ? null : 'skin-small';
};

// What was seen

export const receptaclesSeen = unless((facts) => facts.receptaclesSeen, 'receptacles-not-seen');
export const stripEmpty = unless(
  ({ readable, checklist }) => readable && checklist.receptaclesSeen === 'no',
  'receptacles-not-read-as-absent',
);
export const uterusExternusSeen = unless(
  ({ readable, checklist }) => readable && checklist.uterusExternusSeen === 'yes',
  'uterus-externus-not-seen',
);
export const uterusExternusNotAbsent = unless(({ checklist }) => checklist.uterusExternusSeen !== 'no', 'uterus-externus-absent');
export const accessoryOrgansSeen = unless(
  ({ readable, checklist }) => readable && checklist.accessoryOrgansSeen === 'yes',
  'accessory-organs-not-seen',
);
export const noAccessoryOrgans = unless(({ checklist }) => checklist.accessoryOrgansSeen !== 'yes', 'accessory-organs-seen');
export const fusillaeSeen = unless(({ readable, checklist }) => readable && checklist.fusillaeOutsideSeen === 'yes', 'fusillae-not-seen');
export const bulbsSeen = unless(({ checklist }) => checklist.palpalBulbsOnAnimal === 'yes', 'bulbs-not-seen');
export const bulbsPhotographed = unless((facts) => facts.bulbsPhotographed, 'bulbs-photo-missing');
export const bulbsNotSeen = unless(({ checklist }) => checklist.palpalBulbsOnAnimal !== 'yes', 'male-sign-seen');
export const eggSacLaid = unless(({ checklist }) => checklist.eggSacLaid === 'yes', 'egg-sac-not-laid');
export const eggSacNotLaid = unless(({ checklist }) => checklist.eggSacLaid !== 'yes', 'female-sign-seen');
export const noFemaleSign = unless((facts) => !facts.femaleSignSeen, 'female-sign-seen');
export const noMaleSign = unless((facts) => !facts.maleSignSeen, 'male-sign-seen');

// What the genus allows

export const genusHasSpermathecae = unless(({ genus }) => !genus.withoutSpermathecae, 'genus-without-spermathecae');
export const genusWellSclerotized = unless(({ genus }) => !genus.weaklySclerotized, 'genus-weakly-sclerotized');
/** Where males carry look-alikes, receptacles count only together with the uterus externus. */
export const notMaleAccessoryOrgans = unless(
  ({ genus, checklist }) => !genus.maleAccessoryOrgans || checklist.uterusExternusSeen === 'yes',
  'genus-with-accessory-organs',
);

// Who else says so

export const secondReaderNotAgainst = unless(({ checklist }) => checklist.secondReaderAgrees !== 'no', 'second-reader-disagrees');
export const secondSkin = unless((facts) => facts.clearFemaleOnOtherSkin, 'second-skin-missing');
export const successiveSkin = unless((facts) => facts.clearMaleOnNextSkin, 'successive-skin-missing');
