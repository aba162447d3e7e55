import type { LiveSize } from '../../../../domain/growth/liveSizes.ts';
import type { Estimate } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import type { Measure } from './measures.ts';

/** One size of the living animal as the chart draws it: in no fit, no ratio and no line. */
export interface LivePoint {
  readonly live: LiveSize;
  readonly estimate: Estimate;
}

export function livePointsOf(live: readonly LiveSize[], measure: Measure): LivePoint[] {
  return live.flatMap((size) => {
    const estimate = size[measure];
    return estimate && isUsable(estimate) ? [{ live: size, estimate }] : [];
  });
}
