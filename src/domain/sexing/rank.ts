import type { Level } from './determination.ts';

/** From the weakest to the strongest. */
export const LEVELS: readonly Level[] = ['leaning', 'probable', 'strong', 'established'];

export function rankOf(level: Level): number {
  return LEVELS.indexOf(level);
}

/** A leaning is a guess about an unsexed animal; from "probable" up a reading is firm. */
export function isFirm(level: Level | null): level is Level {
  return level !== null && level !== 'leaning';
}
