import type { LiveSize } from '../../../../domain/growth/liveSizes.ts';
import { followsDirectly } from '../../../../domain/growth/positions.ts';
import type { Ladder, Rung } from '../../../../domain/growth/rung.ts';
import type { Estimate } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';

/** Sizes that the chart can show. */
const MEASURES = ['carapaceLengthMm', 'carapaceWidthMm', 'legFirstMm', 'legFourthMm'] as const;
export type Measure = (typeof MEASURES)[number];

/** One measured skin as the chart draws it. */
export interface SizePoint {
  readonly rung: Rung;
  readonly estimate: Estimate;
  /** The rung just before, measured or not; null for the first. */
  readonly previous: Rung | null;
  /** Whether the rung before is the instar just before. */
  readonly follows: boolean;
  /** It does not fit the skins around it. */
  readonly inDoubt: boolean;
}

/**
 * The skins whose size in this measure is usable.
 *
 * @param inDoubt molts whose carapace length is so.
 */
export function pointsOf(ladder: Ladder, measure: Measure, inDoubt: readonly string[]): SizePoint[] {
  return ladder.rungs.flatMap((rung, index) => {
    const estimate = rung[measure];
    if (!estimate || !isUsable(estimate)) return [];
    const previous = ladder.rungs[index - 1] ?? null;
    const follows = previous !== null && followsDirectly(previous, rung);
    return [{ rung, estimate, previous, follows, inDoubt: measure === 'carapaceLengthMm' && inDoubt.includes(rung.moltId) }];
  });
}

/** Measures that at least one skin has, or the living animal. */
export function measuresIn(ladder: Ladder, live: readonly LiveSize[]): Measure[] {
  return MEASURES.filter((measure) => [...ladder.rungs, ...live].some((sizes) => sizes[measure] !== null));
}
