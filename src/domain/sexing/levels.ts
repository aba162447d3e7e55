import type { Level, ReadSex } from './determination.ts';
import { caseFor } from './evidence/caseOf.ts';
import { weigh } from './evidence/weigh.ts';
import { type Examined, type Facts, factsOf } from './facts.ts';
import { LEVELS, rankOf } from './rank.ts';
import type { LevelReason } from './reason.ts';
import type { Requirement } from './requirements.ts';
import * as needs from './requirements.ts';

/** Ways to a level: every requirement of any one way must be met. */
type Ways = Readonly<Record<Level, readonly (readonly Requirement[])[]>>;

const placed = [needs.skinMatches, needs.stripReadable, needs.bookLungsFound];

const wellPlaced = [...placed, needs.innerSideViewed];

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
    [...wellPlaced, needs.receptaclesSeen, needs.bulbsNotSeen],
    [...wellPlaced, needs.uterusExternusSeen, needs.bulbsNotSeen],
    [needs.eggSacLaid],
  ],
  probable: [receptacles],
  strong: [[...receptaclesWithLip, needs.gradeA]],
  established: [
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
    [...wellPlaced, needs.stripEmpty, needs.genusHasSpermathecae, needs.eggSacNotLaid],
    [...placed, needs.outerSideViewed, needs.fusillaeSeen, needs.eggSacNotLaid],
    [...wellPlaced, needs.accessoryOrgansSeen, needs.eggSacNotLaid],
    [needs.bulbsSeen],
  ],
  probable: [emptyStrip],
  strong: [
    [...emptyStrip, needs.outerSideViewed, needs.fusillaeSeen, needs.successiveSkin],
    [needs.skinMatches, needs.bulbsSeen, needs.noFemaleSign],
  ],
  established: [[needs.skinMatches, needs.bulbsSeen, needs.bulbsPhotographed, needs.noFemaleSign]],
};

const WAYS: Readonly<Record<ReadSex, Ways>> = { female: FEMALE, male: MALE };

export interface Assessment {
  /** Null when the answers support not even a leaning to this sex. */
  readonly highest: Level | null;
  /** The level above; null at the top. */
  readonly next: Level | null;
  /** What each way to `next` still lacks, the nearest way first. */
  readonly missing: readonly (readonly LevelReason[])[];
}

/**
 * The highest level at which a sex may be signed for one skin. Any lower level may be chosen as well. Two things hold it
 * down: the working rules above, and the evidence of this skin and of the animal itself. A leaning needs anything among it that
 * weighs for the sex, even where something else weighs against it; more needs the band. All of it is judgment, since no controlled study of error rates is known (Hildebrandt 2022 notes how little is published). Two readers
 * of one skin share its picture, so that no one skin establishes a female, whoever reads it.
 */
export function assessLevel(sex: ReadSex, examined: Examined): Assessment {
  const facts = factsOf(examined);
  const band = bandRank(sex, examined);
  const highest = LEVELS.findLast((level) => lackingWays(sex, level, { facts, band }).some((reasons) => reasons.length === 0)) ?? null;
  const next = LEVELS[highest === null ? 0 : rankOf(highest) + 1] ?? null;
  return { highest, next, missing: next === null ? [] : lackingWays(sex, next, { facts, band }) };
}

/** What each way to one particular level lacks, the nearest first; that one is empty when the level is supported. */
export function missingFor(sex: ReadSex, level: Level, examined: Examined): LevelReason[][] {
  return lackingWays(sex, level, { facts: factsOf(examined), band: bandRank(sex, examined) });
}

/** How far the evidence of this reading carries, as a rank of levels; -1 below a leaning. */
function bandRank(sex: ReadSex, examined: Examined): number {
  const { genus, model, determinations, liveSigns, animalPhotoIds, skinsInOrder, exuviaId, checklist, readOn, animalPhotoCount } = examined;
  const inHand = { exuviaId, checklist, readOn, replaces: null, photographed: animalPhotoCount > 0 };
  const onRecord = { genus, determinations, liveSigns, animalPhotoIds, skinsInOrder, inHand };
  const { towards, band, items } = weigh(caseFor(sex, onRecord), model);
  const own = items.filter((item) => item.exuviaId === exuviaId || item.exuviaId === null);
  if (!own.some((item) => item.towards === sex)) return -1;
  return towards !== sex || band === 'unsexed' ? 0 : rankOf(band);
}

function lackingWays(sex: ReadSex, level: Level, { facts, band }: { facts: Facts; band: number }): LevelReason[][] {
  const weak: LevelReason[] = band < rankOf(level) ? ['evidence-too-weak'] : [];
  return WAYS[sex][level].map((way) => [...lacking(way, facts), ...weak]).sort((a, b) => a.length - b.length);
}

function lacking(way: readonly Requirement[], facts: Facts): LevelReason[] {
  return [...new Set(way.map((requirement) => requirement(facts)).filter((reason) => reason !== null))];
}
