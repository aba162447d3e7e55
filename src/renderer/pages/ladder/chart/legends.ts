import type { Rung } from '../../../../domain/growth/rung.ts';
import type { Bands } from '../../../../domain/growth/trend/bands.ts';
import type { Measure } from './measures.ts';

/** What the signs in the drawing mean: those that are there. */
export function instarLegend(rungs: readonly Rung[], measure: Measure, bands: Bands | null): string {
  const next = bands?.next;
  return sentences(
    'Each point is one skin and stands at the instar that ended; its bar is ± U (95 %). Equal steps upwards are equal ratios.',
    bands &&
      `The dashed line is the fitted growth${bands.model === 'parabola' ? ', which bends here' : ''}; it fills no gap. The inner band holds its mean, the outer one a single skin (both 95 %).`,
    next &&
      next.oneHigh95Mm < 20 * next.middleMm &&
      `By this fit alone, the next skin would show ${next.oneLow95Mm.toFixed(1)} to ${next.oneHigh95Mm.toFixed(1)} mm.`,
    (isIncomplete(rungs, measure) || rungs.slice(1).some(({ skippedInstars }) => skippedInstars > 0)) &&
      'A shaded column has no such size on record.',
    rungs.some(({ instar }) => instar?.certainty === 'inferred') && 'A number with a question mark holds if no molt was missed.',
  );
}

export function dateLegend(rungs: readonly Rung[], measure: Measure): string {
  return sentences(
    'Each point stands on the day of the molt; the line before it is the life of the instar that ended then, at the size its skin shows.',
    'A dotted line: when that instar began is not on record.',
    isIncomplete(rungs, measure) && 'A dashed upright is a molt without this size.',
    'What came after the last molt is larger and not measured yet.',
  );
}

export function ratioLegend(values: number, hollow: boolean): string {
  if (values === 0) return 'A ratio needs two measured skins whose places in the row are known. There are not two yet.';
  return sentences(
    'Each point is how many times as large a skin is as the one before, with ± U (95 %) from the readings.',
    hollow && 'A hollow point spans several instars and is given per instar.',
    'The dotted line is the ratio at which weight doubles with each molt (Przibram), a yardstick and no law; the dashed line is the mean of this animal.',
  );
}

export function intervalLegend(values: number, hollow: boolean): string {
  if (values === 0) return 'The days an instar lasted need two dated molts, one after the other. There are not two yet.';
  return sentences(
    'Each point is how long an instar lasted, from the molt before to the one that left its skin. A bar shows how far dates are known only as spans.',
    hollow && 'A hollow point may hold several instars.',
    'The instar the animal is in now has not ended and has no point.',
  );
}

function isIncomplete(rungs: readonly Rung[], measure: Measure): boolean {
  return rungs.some((rung) => rung[measure] === null);
}

function sentences(...parts: readonly (string | false | null | undefined)[]): string {
  return parts.filter(Boolean).join(' ');
}
