import type { Level, Sex } from './determination.ts';
import { type Examined, type Facts, factsOf } from './facts.ts';
import { LEVELS, rankOf } from './rank.ts';
import type { LevelReason } from './reason.ts';
import type { Requirement } from './requirements.ts';
import * as needs from './requirements.ts';

/** Ways to a level: every requirement of any one way must be met. */
type Ways = Readonly<Record<Level, readonly (readonly Requirement[])[]>>;

const wellPlaced = [needs.skinMatches, needs.stripReadable, needs.bookLungsFound, needs.innerSideViewed];

const receptacles = [
  ...wellPlaced,
  needs.receptaclesSeen,
  needs.genusHasSpermathecae,
  needs.uterusExternusNotAbsent,
  needs.notMaleAccessoryOrgans,
  needs.noAccessoryOrgans,
  needs.noMaleSign,
  needs.secondReaderNotAgainst,
];

const receptaclesWithLip = [...receptacles, needs.uterusExternusSeen, needs.large];

/**
 * The female column. Presence is read, so a small or folded skin can still give "probable"; the uterus externus tells
 * receptacles from a male's accessory organs.
 */
const FEMALE: Ways = {
  leaning: [
    [needs.receptaclesSeen, needs.bulbsNotSeen],
    [needs.uterusExternusSeen, needs.bulbsNotSeen],
    [needs.fusillaeAbsent, needs.bulbsNotSeen],
    [needs.eggSacLaid],
  ],
  probable: [receptacles],
  strong: [[...receptaclesWithLip, needs.gradeA]],
  established: [
    [...receptaclesWithLip, needs.gradeAOrB, needs.secondReaderAgrees],
    [...receptaclesWithLip, needs.gradeAOrB, needs.secondSkin],
    [needs.skinMatches, needs.eggSacLaid, needs.bulbsNotSeen],
  ],
};

const emptyStrip = [
  ...wellPlaced,
  needs.stripEmpty,
  needs.gradeA,
  needs.large,
  needs.genusHasSpermathecae,
  needs.genusWellSclerotized,
  needs.noFemaleSign,
  needs.secondReaderNotAgainst,
];

/**
 * The male column. An empty strip is absence: on a small, folded or torn skin it gives no more than "leaning", however
 * often it is read. Only bulbs seen on the animal establish a male.
 */
const MALE: Ways = {
  leaning: [
    [needs.stripEmpty, needs.emptinessNotFromOutside, needs.genusHasSpermathecae, needs.eggSacNotLaid],
    [needs.fusillaeSeen, needs.eggSacNotLaid],
    [needs.accessoryOrgansSeen, needs.eggSacNotLaid],
    [needs.bulbsSeen],
  ],
  probable: [emptyStrip],
  strong: [
    [...emptyStrip, needs.outerSideViewed, needs.fusillaeSeen, needs.successiveSkin],
    [needs.skinMatches, needs.bulbsSeen, needs.noFemaleSign],
  ],
  established: [[needs.skinMatches, needs.bulbsSeen, needs.bulbsPhotographed, needs.noFemaleSign]],
};

const WAYS: Readonly<Record<Exclude<Sex, 'unsexed'>, Ways>> = { female: FEMALE, male: MALE };

export interface Assessment {
  /** Null when the answers support not even a leaning to this sex. */
  readonly highest: Level | null;
  /** The level above; null at the top. */
  readonly next: Level | null;
  /** What each way to `next` still lacks, the nearest way first. */
  readonly missing: readonly (readonly LevelReason[])[];
}

/**
 * The highest level at which a sex may be signed for one skin. Any lower level may be chosen as well. The levels follow
 * the working rules of sexing tarantulas from skins; all of them are judgements, since no controlled study of error
 * rates is known (Hildebrandt 2022 notes how little is published).
 */
export function assessLevel(sex: Exclude<Sex, 'unsexed'>, examined: Examined): Assessment {
  const facts = factsOf(examined);
  const highest = LEVELS.findLast((level) => isSupported(WAYS[sex][level], facts)) ?? null;
  const next = LEVELS[highest === null ? 0 : rankOf(highest) + 1] ?? null;
  return { highest, next, missing: next === null ? [] : lackingWays(WAYS[sex][next], facts) };
}

/** What each way to one particular level lacks, the nearest first; that one is empty when the level is supported. */
export function missingFor(sex: Exclude<Sex, 'unsexed'>, level: Level, examined: Examined): LevelReason[][] {
  return lackingWays(WAYS[sex][level], factsOf(examined));
}

function isSupported(ways: readonly (readonly Requirement[])[], facts: Facts): boolean {
  return ways.some((way) => lacking(way, facts).length === 0);
}

function lackingWays(ways: readonly (readonly Requirement[])[], facts: Facts): LevelReason[][] {
  return ways.map((way) => lacking(way, facts)).sort((a, b) => a.length - b.length);
}

function lacking(way: readonly Requirement[], facts: Facts): LevelReason[] {
  return [...new Set(way.map((requirement) => requirement(facts)).filter((reason) => reason !== null))];
}
