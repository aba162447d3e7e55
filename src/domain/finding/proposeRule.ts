import { medianOf } from '../numerics/median.ts';
import type { LightImage } from './light.ts';
import { type FoundTicks, findTicksAlong } from './rule.ts';
import type { Segment } from './strongLines.ts';
import { type Band, bandAt, isBandInside, peaksOf, pointOf, type Strip, stripThrough } from './tickBands.ts';

export interface ProposedTicks {
  readonly found: FoundTicks;
  readonly ends: readonly [ReturnType<typeof pointOf>, ReturnType<typeof pointOf>];
  /** 0 to 1: share of the ticks of the row that were found, less where they scatter. */
  readonly confidence: number;
}

/** Bands this far from a straight edge are looked at, on both sides of it: ticks begin at the rule's edge or near it. */
const OFFSETS_PX = [5, 9, 14, 20, 28];
const SIGMA_PX = 1.1;
/** Neighbors are even within this, and a row is a run of at least so many of them. */
const EVEN = 0.2;
const LEAST_RUN = 15;
/** Lines of a row look much alike in strength; texture does not. */
const LEAST_STRENGTH = 0.05;
/** Rows that are looked at closely. */
const CANDIDATES = 3;
const LEAST_CONFIDENCE = 0.5;

interface RowCandidate {
  readonly strip: Strip;
  readonly vPx: number;
  readonly startPx: number;
  readonly endPx: number;
  readonly count: number;
}

/** A row of ticks proposed without a click: along the straight edges of the picture, the longest run of evenly spaced lines. */
export function proposeTicks(image: LightImage, segments: readonly Segment[]): ProposedTicks | null {
  const rows = segments.flatMap((segment) => evenRows(image, stripThrough(segment.from, segment.to)));
  rows.sort((one, other) => other.count - one.count);
  let best: ProposedTicks | null = null;
  for (const { strip, vPx, startPx, endPx } of rows.slice(0, CANDIDATES)) {
    const ends = [pointOf(strip, startPx, vPx), pointOf(strip, endPx, vPx)] as const;
    const found = findTicksAlong(image, ends[0], ends[1]);
    if (!found.ok) continue;
    const { ticks, missing, scatterPx } = found.value;
    const spacingPx = (endPx - startPx) / (ticks.length + missing.length);
    const confidence = (ticks.length / (ticks.length + missing.length)) * Math.exp(-((scatterPx / (0.1 * spacingPx)) ** 2));
    if (confidence < LEAST_CONFIDENCE || ticks.length < LEAST_RUN) continue;
    if (!best || ticks.length > best.found.ticks.length) best = { found: found.value, ends, confidence };
  }
  return best;
}

function evenRows(image: LightImage, strip: Strip): readonly RowCandidate[] {
  return OFFSETS_PX.flatMap((offset) => [offset, -offset]).flatMap((vPx) => {
    if (!isBandInside(image, strip, vPx)) return [];
    const run = longestEvenRun(bandAt(image, strip, vPx, 3, SIGMA_PX, 1, 0));
    return run ? [{ strip, vPx, ...run }] : [];
  });
}

/** The longest run of peaks whose spacings agree with those around them. */
function longestEvenRun(band: Band): Pick<RowCandidate, 'startPx' | 'endPx' | 'count'> | null {
  const all = peaksOf(band, LEAST_STRENGTH);
  if (all.length < LEAST_RUN) return null;
  const strengths = all.map(({ strength }) => strength).toSorted((one, other) => one - other);
  const least = 0.3 * (strengths[Math.floor(0.85 * strengths.length)] ?? 0);
  const peaks = all.filter(({ strength }) => strength >= least);
  const spacings = peaks.slice(1).map((peak, index) => peak.uPx - (peaks[index]?.uPx ?? 0));
  let best = { startPx: 0, endPx: 0, count: 0 };
  let begin = 0;
  let odd = 0;
  spacings.forEach((spacing, index) => {
    const around = medianOf(spacings.slice(Math.max(0, index - 4), index + 5));
    odd = Math.abs(spacing - around) <= EVEN * around ? Math.max(0, odd - 0.25) : odd + 1;
    // A missing or a split tick makes two odd spacings; more end the run.
    if (odd > 2.5) {
      begin = index + 1;
      odd = 0;
    }
    const count = index + 1 - begin;
    if (count > best.count) best = { startPx: peaks[begin]?.uPx ?? 0, endPx: peaks[index + 1]?.uPx ?? 0, count };
  });
  return best.count >= LEAST_RUN ? best : null;
}
