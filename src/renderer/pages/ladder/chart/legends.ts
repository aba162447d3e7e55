import type { Rung } from '../../../../domain/growth/rung.ts';
import type { Bands } from '../../../../domain/growth/trend/bands.ts';
import { counted } from '../../../../words/counts.ts';
import { spanInWords } from '../../../../words/dates.ts';
import type { LivePoint } from './livePoints.ts';
import { foretoldIn, foretoldSizeInWords, type LivingNow, type RunningInterval, runningInWords } from './livingNow.ts';
import type { Measure, SizePoint } from './measures.ts';
import { bandRoom } from './scales.ts';

interface Shown {
  readonly rungs: readonly Rung[];
  readonly measure: Measure;
  /** Null where the animal is not kept any more. */
  readonly living: LivingNow | null;
  readonly points: readonly SizePoint[];
  readonly live: readonly LivePoint[];
  /** Sizes of the living animal that have no place in this drawing. */
  readonly unplaced: number;
  /** Sizes known to no better than half of themselves, which are not drawn. */
  readonly unusable: number;
}

/** What the signs in the drawing mean: those that are there. */
export function instarLegend({ rungs, measure, living, bands, points, live, unplaced, unusable }: Shown & { bands: Bands | null }): string {
  if (points.length + live.length === 0) return nothingHere(unplaced, unusable, 'whose place in the row is known');
  const foretold = foretoldIn(living, measure);
  const sizesMm = [...points, ...live].map(({ estimate }) => estimate.value);
  return sentences(
    points.length > 0 && 'Each point is one skin and stands at the instar that ended; its bar is ± U (95 %).',
    'Equal steps upwards are equal ratios.',
    liveWords(live, 'stands at the instar it lived in, beside the place of that instar’s skin'),
    bands &&
      `The dashed line is growth as the skins tell it: from one to the next, and through gaps by the fitted ratio${bands.model === 'parabola' ? ', which changes along the row' : ''}. The inner band holds the size expected there, the outer one a single skin (both 95 %): they are narrow at a measured skin and open where none was measured, since scatter adds up from molt to molt${bandRoom(bands, sizesMm).cut ? '; so few skins leave them wider than the drawing' : ''}.`,
    foretold && foretoldSizeInWords(foretold),
    (isIncomplete(rungs, measure) || rungs.slice(1).some(({ skippedInstars }) => skippedInstars > 0)) &&
      'A shaded column has no skin with such a size on record.',
    rungs.some(({ instar }) => instar?.certainty === 'inferred') && 'A number with a question mark holds if no molt was missed.',
    unplacedWords(unplaced, 'whose place in the row is not known'),
    unusableWords(unusable),
  );
}

export function dateLegend({ rungs, measure, living, points, live, unplaced, unusable }: Shown): string {
  if (points.length + live.length === 0) return nothingHere(unplaced, unusable, 'with a date');
  return sentences(
    points.length > 0 &&
      'Each point stands on the day of the molt; the line before it is the life of the instar that ended then, at the size its skin shows. A dotted line: when that instar began is not on record.',
    liveWords(live, 'stands on the day of its photo'),
    isIncomplete(rungs, measure) && 'A dashed upright is a molt without this size.',
    live.length === 0 && 'What came after the last molt is larger and not measured yet.',
    foretoldIn(living, measure) && 'The green line up to today is the size foretold of the instar living now, within nine chances in ten.',
    living?.due &&
      `The green strip at the foot is when the next molt is foretold, light for nine chances in ten, dark for even ones: ${spanInWords(living.due.window90.from, living.due.window90.to)}.`,
    unplacedWords(unplaced, 'whose photo has no date'),
    unusableWords(unusable),
  );
}

function liveWords(live: readonly LivePoint[], where: string): string | false {
  return (
    live.length > 0 &&
    `A green lozenge was measured on a photo of the living animal and ${where}; it is no skin, and no line, band or ratio rests on it.`
  );
}

function unplacedWords(unplaced: number, why: string): string | false {
  return (
    unplaced > 0 &&
    `Left out here: ${counted(unplaced, 'size')} of the living animal ${why}; the table has ${unplaced === 1 ? 'it' : 'them'}.`
  );
}

function unusableWords(unusable: number): string | false {
  return (
    unusable > 0 &&
    `Not drawn: ${counted(unusable, 'size')} without a usable length, known to no better than half of itself; the Bench says why.`
  );
}

function nothingHere(unplaced: number, unusable: number, which: string): string {
  return sentences(
    `No size ${which} is on record in this measure.`,
    unplaced > 0 && 'Sizes of the living animal stand in the table.',
    unusableWords(unusable),
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

/** @param running the interval that has not ended; null where none is waited for. */
export function intervalLegend(
  values: readonly { readonly hollow: boolean }[],
  running: { readonly living: LivingNow; readonly interval: RunningInterval } | null,
): string {
  const open = running && runningInWords(running.interval, running.living);
  if (values.length === 0)
    return sentences('The days an instar lasted need two dated molts, one after the other. There are not two yet.', open);
  return sentences(
    'Each point is how long an instar lasted, from the molt before to the one that left its skin. A bar shows how far dates are known only as spans.',
    'Equal steps upwards are equal ratios: the axis is logarithmic.',
    values.some(({ hollow }) => hollow) && 'A hollow point may hold several instars.',
    open ?? 'The last instar of the animal has no point.',
    open && 'The arrow begins at the days it has waited.',
  );
}

function isIncomplete(rungs: readonly Rung[], measure: Measure): boolean {
  return rungs.some((rung) => rung[measure] === null);
}

function sentences(...parts: readonly (string | false | null | undefined)[]): string {
  return parts.filter(Boolean).join(' ');
}
