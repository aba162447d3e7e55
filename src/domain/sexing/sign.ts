import type { Determination, Sex, SexSign } from './determination.ts';
import { isFirm, rankOf } from './rank.ts';
import { standingOf } from './standing.ts';

const UNSEXED: SexSign = { sex: 'unsexed', level: null, conflict: false };

const CONFLICT: SexSign = { sex: 'unsexed', level: null, conflict: true };

/**
 * The sign of an animal from its whole history: the best level of the sex its standing determinations name. Levels never
 * add up, and a contradiction is never averaged: the animal stays unsexed, marked as in conflict, until one of the
 * readings is corrected or withdrawn. A leaning is a guess about an unsexed animal, so it does not contradict a
 * probable reading or a better one; two leanings that disagree do contradict each other.
 */
export function signOf(determinations: readonly Determination[]): SexSign {
  if (contradictionsOf(determinations).length > 0) return CONFLICT;
  const best = standingOf(determinations)
    .filter((determination) => determination.sex !== 'unsexed')
    .reduce<Determination | null>((found, next) => (found !== null && weightOf(found) >= weightOf(next) ? found : next), null);
  return best ? { sex: best.sex, level: best.level, conflict: false } : UNSEXED;
}

/** The standing determinations that contradict each other, in the order given; empty when there is no contradiction. */
export function contradictionsOf(determinations: readonly Determination[]): Determination[] {
  const sexed = standingOf(determinations).filter((determination) => determination.sex !== 'unsexed');
  const firm = sexed.filter((determination) => isFirm(determination.level));
  const weighing = firm.length > 0 ? firm : sexed;
  return names(weighing, 'female') && names(weighing, 'male') ? weighing : [];
}

/**
 * The standing determinations that name the other sex than this one, in the order given, whether or not the rule calls that
 * a contradiction: a leaning against a firm reading is none, and yet has to be said. Empty for one that no longer stands.
 */
export function opposedTo(determination: Determination, determinations: readonly Determination[]): Determination[] {
  const standing = standingOf(determinations);
  if (determination.sex === 'unsexed' || !standing.includes(determination)) return [];
  return standing.filter(({ sex }) => sex !== 'unsexed' && sex !== determination.sex);
}

function names(determinations: readonly Determination[], sex: Sex): boolean {
  return determinations.some((determination) => determination.sex === sex);
}

function weightOf(determination: Determination): number {
  return determination.level === null ? -1 : rankOf(determination.level);
}
