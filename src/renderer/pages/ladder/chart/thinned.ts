/** Words below a place of an axis. */
export interface Tick {
  readonly xPx: number;
  readonly words: string;
}

/** Room that a letter takes at most, and that stands between two words, px. */
const LETTER_PX = 7.5;
const BETWEEN_PX = 6;

/**
 * Every one of the ticks, or every second, third and so on, so that no two words touch. The last one always stays, for the newest is
 * what is looked for.
 *
 * @param ticks in rising order, evenly spaced.
 */
export function thinned<T extends Tick>(ticks: readonly T[]): T[] {
  const [first, second] = ticks;
  if (!first || !second) return [...ticks];
  const longest = Math.max(...ticks.map(({ words }) => words.length));
  const every = Math.max(1, Math.ceil((longest * LETTER_PX + BETWEEN_PX) / (second.xPx - first.xPx)));
  return ticks.filter((_, index) => (ticks.length - 1 - index) % every === 0);
}
