import { fitGrowth, type SizeAtStep } from '../../../../domain/growth/growthFit.ts';
import type { LiveSize } from '../../../../domain/growth/liveSizes.ts';
import { followsDirectly } from '../../../../domain/growth/positions.ts';
import type { GrowthFit, Ladder, Rung } from '../../../../domain/growth/rung.ts';
import type { Estimate } from '../../../../domain/measuring/quantity.ts';

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
}

export function pointsOf(ladder: Ladder, measure: Measure): SizePoint[] {
  return ladder.rungs.flatMap((rung, index) => {
    const estimate = rung[measure];
    if (!estimate) return [];
    const previous = ladder.rungs[index - 1] ?? null;
    return [{ rung, estimate, previous, follows: previous !== null && followsDirectly(previous, rung) }];
  });
}

/** The growth of one measure, fitted as that of the carapace length is; null with too few skins. */
export function fitOf(ladder: Ladder, measure: Measure): GrowthFit | null {
  if (measure === 'carapaceLengthMm') return ladder.fit;
  return fitGrowth(measuredSteps(ladder, measure));
}

/** What a fit of this measure rests on: skins with a size whose place in the row is known. */
export function measuredSteps(ladder: Ladder, measure: Measure): SizeAtStep[] {
  return ladder.rungs.flatMap(({ step, stepKnown, [measure]: size }) => (stepKnown && size ? [{ step, lengthMm: size.value }] : []));
}

/** Measures that at least one skin has, or the living animal. */
export function measuresIn(ladder: Ladder, live: readonly LiveSize[]): Measure[] {
  return MEASURES.filter((measure) => [...ladder.rungs, ...live].some((sizes) => sizes[measure] !== null));
}
