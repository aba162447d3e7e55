import type { ImagePoint } from '../measuring/points.ts';
import { medianOf } from '../numerics/median.ts';
import { fail, type Result, succeed } from '../result.ts';
import { collectTicks } from './collectTicks.ts';
import type { LightImage } from './light.ts';
import { numberPeaks, startingAtClick } from './numberPeaks.ts';
import { fitProjectiveLine, markAt, type ProjectiveLineFit, spacingAt } from './projectiveLine.ts';
import { stripThrough } from './tickBands.ts';
import { tickContrast } from './tickEvidence.ts';
import { bestRow, extentOf, LEAST_TICKS } from './tickRow.ts';

/** One tick of a rule: a stretch of its middle line, in the picture. */
export interface Tick {
  /** Counted from the tick nearest to the first click, upward towards the second. */
  readonly number: number;
  readonly from: ImagePoint;
  readonly to: ImagePoint;
}

export interface FoundTicks {
  readonly ticks: readonly Tick[];
  /** Of the ticks' numbers to px from the first click along the clicked line. */
  readonly line: ProjectiveLineFit;
  /** Numbers between the first and the last tick that were not found, or lay off. */
  readonly missing: readonly number[];
  /** Root mean square distance of the ticks from where the map has them, px: what the rule itself is off stands in it, too. */
  readonly scatterPx: number;
  /** Standard uncertainty of one point of a tick across it, px: how well its middle line is found, wherever it should be. */
  readonly placePx: number;
}

/** Texture also has a peak near most places; it scatters by a sixth of the spacing, and much of it lies off. */
const LARGEST_SCATTER = 0.08;
const LEAST_SHARE_FOUND = 0.4;
/** Halfway between grain, which stays below 0.55 in all trials, and rows with a third of their ticks gone, which stay above 1. */
const LEAST_CONTRAST = 0.75;

/**
 * Both clicks may be off across the row: lines this steep against the clicked one are tried too, as shares of its length, until
 * one gives most of the ticks that lie between the clicks.
 */
const LEANS = [0, 0.02, -0.02, 0.045, -0.045];
const MOST_OF_THE_TICKS = 0.9;
/** Every line that is tried is one more chance for texture: what is found along another than the clicked one must be a clear row. */
const CLEAR_ROW = { ticks: 20, share: 0.7, scatter: 0.05 } as const;

/**
 * Finds all ticks between two clicks on a rule's row of ticks, numbers them, and fits the map of a straight line of equal
 * spaces seen in perspective. Missing and worn ticks leave gaps in the numbers; longer ticks of fives and tens count as any other.
 *
 * @param from first click; `to` the second: on the row of ticks, or off it by at most 6 % of their distance.
 * @returns `ticks-not-found` when fewer than eight form an even row that stands out from the grain.
 */
export function findTicks(image: LightImage, from: ImagePoint, to: ImagePoint): Result<FoundTicks> {
  let best: Result<FoundTicks> | null = null;
  for (const lean of LEANS) {
    const [dx, dy] = [((to.xPx - from.xPx) * lean) / 2, ((to.yPx - from.yPx) * lean) / 2];
    const found = findTicksAlong(image, { xPx: from.xPx + dy, yPx: from.yPx - dx }, { xPx: to.xPx - dy, yPx: to.yPx + dx });
    if (lean !== 0 && !(found.ok && isClearRow(found.value))) continue;
    if (!best || (found.ok && !(best.ok && best.value.ticks.length >= found.value.ticks.length))) best = found;
    if (best.ok && shareOfRow(best.value, from, to) >= MOST_OF_THE_TICKS) break;
  }
  return best ?? fail({ code: 'ticks-not-found', found: 0, needed: LEAST_TICKS });
}

function isClearRow({ ticks, missing, line, scatterPx }: FoundTicks): boolean {
  const middle = (ticks[0]?.number ?? 0) + (ticks.length + missing.length) / 2;
  return (
    ticks.length >= CLEAR_ROW.ticks &&
    ticks.length >= CLEAR_ROW.share * (ticks.length + missing.length) &&
    scatterPx <= CLEAR_ROW.scatter * spacingAt(line, middle)
  );
}

/** How many of the ticks that would fit between the clicks were found. */
function shareOfRow({ ticks, line }: FoundTicks, from: ImagePoint, to: ImagePoint): number {
  return ticks.length / (Math.floor(markAt(line, Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx))) + 1);
}

/** The same along the clicked line alone, for ends that were seen and not clicked. */
export function findTicksAlong(image: LightImage, from: ImagePoint, to: ImagePoint): Result<FoundTicks> {
  const strip = stripThrough(from, to);
  if (!(strip.lengthPx > 4 * LEAST_TICKS)) return fail({ code: 'scale-points-coincide' });
  const row = bestRow(image, strip);
  if (!row) return fail({ code: 'ticks-not-found', found: 0, needed: LEAST_TICKS });
  const numbered = numberPeaks(row.middle.peaks);
  const rough = fitProjectiveLine(
    numbered.map(({ number }) => number),
    numbered.map(({ uPx }) => uPx),
    0.2,
  );
  if (!rough) return fail({ code: 'ticks-not-found', found: numbered.length, needed: LEAST_TICKS });
  const line = startingAtClick(rough);
  const ticks = collectTicks(row, strip, line);
  if (ticks.length < LEAST_TICKS) return fail({ code: 'ticks-not-found', found: ticks.length, needed: LEAST_TICKS });
  const fit = fitProjectiveLine(
    ticks.map(({ number }) => number),
    ticks.map(({ uPx }) => uPx),
    0.05,
  );
  if (!fit) return fail({ code: 'ticks-not-found', found: ticks.length, needed: LEAST_TICKS });
  const kept = ticks.filter((_, index) => fit.used[index]);
  const numbers = new Set(kept.map(({ number }) => number));
  const [first, last] = [Math.min(...numbers), Math.max(...numbers)];
  const spacingPx = spacingAt(fit, (first + last) / 2);
  const isRow = fit.residualPx <= LARGEST_SCATTER * spacingPx && kept.length >= LEAST_SHARE_FOUND * (last - first + 1);
  const said = { ...extentOf(row), line: fit, first, last, lean: medianOf(kept.map(({ slope }) => slope)) };
  const standsOut = isRow && tickContrast(image, strip, said) >= LEAST_CONTRAST;
  if (!standsOut || kept.length < LEAST_TICKS) return fail({ code: 'ticks-not-found', found: kept.length, needed: LEAST_TICKS });
  return succeed({
    ticks: kept.map(({ number, tick }) => ({ number, from: tick.from, to: tick.to })),
    line: fit,
    missing: Array.from({ length: last - first + 1 }, (_, index) => first + index).filter((number) => !numbers.has(number)),
    scatterPx: fit.residualPx,
    placePx: Math.sqrt(medianOf(kept.map(({ endPx }) => endPx ** 2))),
  });
}
