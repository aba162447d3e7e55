import type { ImagePoint } from '../measuring/points.ts';
import { medianOf } from '../numerics/median.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { LightImage } from './light.ts';
import { fitProjectiveLine, markAt, type ProjectiveLine, type ProjectiveLineFit, placeOn, spacingAt } from './projectiveLine.ts';
import { type Band, bandAt, isBandInside, type Peak, peakNear, peaksOf, pointOf, type Strip, stripThrough } from './tickBands.ts';
import { type SaidTicks, tickContrast } from './tickEvidence.ts';
import { tickLine } from './tickLine.ts';

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

/** Fewer ticks than this are no graduation. */
const LEAST_TICKS = 8;
/** Bands are sought this far to both sides of the clicked line, as a share of its length, and at least so many px. */
const SEARCH_SHARE = 0.06;
const LEAST_SEARCH_PX = 14;
const BAND_HEIGHT_PX = 3;
const BAND_STRIDE_PX = 2;
/** Blur of the line finder, by the width of a fine engraved line in a usual picture. */
const SIGMA_PX = 1.1;
/** Weakest peak that counts, as a share of the band's strong ones; below lie the texture of wood and brushed steel. */
const LEAST_STRENGTH_SHARE = 0.3;
/** Ticks next to each other differ in spacing by less than this. */
const SPACING_TOLERANCE = 0.22;
/** Texture also has a peak near most places; it scatters by a sixth of the spacing, and much of it lies off. */
const LARGEST_SCATTER = 0.08;
const LEAST_SHARE_FOUND = 0.4;
/** Halfway between grain, which stays below 0.55 in all trials, and rows with a third of their ticks gone, which stay above 1. */
const LEAST_CONTRAST = 0.75;
/** Bands with at least this share of the best one's even peaks, by strength, cross the short ticks. */
const GOOD_BAND_SHARE = 0.6;

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

interface ScoredBand {
  readonly band: Band;
  readonly peaks: readonly Peak[];
  /** Sum of the strengths of its evenly spaced peaks: texture has as many by chance, and beside dark ticks the bright gaps are even, but both are weak. */
  readonly evenStrength: number;
  readonly evenCount: number;
}

interface Row {
  /** 1 for dark lines, -1 for bright ones. */
  readonly sign: 1 | -1;
  readonly middle: ScoredBand;
  readonly bands: readonly ScoredBand[];
}

/** The run of neighboring bands that cross the most evenly spaced lines, dark or bright. */
function bestRow(image: LightImage, strip: Strip): Row | null {
  const reach = Math.max(LEAST_SEARCH_PX, SEARCH_SHARE * strip.lengthPx);
  let best: Row | null = null;
  for (const sign of [1, -1] as const) {
    const bands: ScoredBand[] = [];
    for (let v = -reach; v <= reach; v += BAND_STRIDE_PX) {
      if (isBandInside(image, strip, v)) bands.push(scored(bandAt(image, strip, v, BAND_HEIGHT_PX, SIGMA_PX, sign, 2)));
    }
    const row = longestRun(bands, sign);
    if (row && (!best || row.middle.evenStrength > best.middle.evenStrength)) best = row;
  }
  return best && best.middle.evenCount >= LEAST_TICKS ? best : null;
}

function longestRun(bands: readonly ScoredBand[], sign: Row['sign']): Row | null {
  const most = Math.max(0, ...bands.map(({ evenStrength }) => evenStrength));
  let best: readonly ScoredBand[] = [];
  let run: ScoredBand[] = [];
  for (const band of bands) {
    run = band.evenStrength >= GOOD_BAND_SHARE * most ? [...run, band] : [];
    if (run.length > best.length) best = run;
  }
  const middle = best[Math.floor(best.length / 2)];
  return middle ? { sign, middle, bands: best } : null;
}

function scored(band: Band): ScoredBand {
  const all = peaksOf(band, 0);
  const strengths = all.map(({ strength }) => strength).toSorted((one, other) => one - other);
  const strong = strengths[Math.floor(strengths.length * 0.85)] ?? 0;
  const peaks = all.filter(({ strength }) => strength >= LEAST_STRENGTH_SHARE * strong);
  const spacings = peaks.slice(1).map((peak, index) => peak.uPx - (peaks[index]?.uPx ?? 0));
  let evenCount = 0;
  let evenStrength = 0;
  spacings.forEach((spacing, index) => {
    const around = medianOf(spacings.slice(Math.max(0, index - 4), index + 5));
    if (Math.abs(spacing - around) > SPACING_TOLERANCE * around) return;
    evenCount += 1;
    evenStrength += peaks[index]?.strength ?? 0;
  });
  return { band, peaks, evenStrength, evenCount };
}

/** Numbers peaks by the spacing around them; a peak off the even row is left out, a gap leaves numbers out. */
function numberPeaks(peaks: readonly Peak[]): readonly { readonly number: number; readonly uPx: number }[] {
  const spacings = peaks.slice(1).map((peak, index) => peak.uPx - (peaks[index]?.uPx ?? 0));
  const local = (index: number): number => medianOf(spacings.slice(Math.max(0, index - 6), index + 7));
  const runs: { number: number; uPx: number }[][] = [];
  let run: { number: number; uPx: number }[] = [];
  peaks.forEach((peak, index) => {
    const last = run.at(-1);
    if (!last) {
      run.push({ number: 0, uPx: peak.uPx });
      return;
    }
    const steps = (peak.uPx - last.uPx) / local(index);
    const whole = Math.round(steps);
    if (whole >= 1 && whole <= 6 && Math.abs(steps - whole) <= SPACING_TOLERANCE * Math.sqrt(whole)) {
      run.push({ number: last.number + whole, uPx: peak.uPx });
    } else if (whole > 6) {
      runs.push(run);
      run = [{ number: 0, uPx: peak.uPx }];
    }
  });
  runs.push(run);
  return runs.reduce((longest, one) => (one.length > longest.length ? one : longest));
}

/** The same map with its numbers shifted so that 0 is the tick nearest to the first click. */
function startingAtClick(line: ProjectiveLine): ProjectiveLine {
  const shift = Math.round(markAt(line, 0));
  const last = line.c * shift + 1;
  return { a: line.a / last, b: (line.a * shift + line.b) / last, c: line.c / last };
}

interface CollectedTick {
  readonly number: number;
  /** Where the tick crosses the middle band. */
  readonly uPx: number;
  /** Px along the strip per px across it. */
  readonly slope: number;
  /** Standard uncertainty of its ends, px along the strip. */
  readonly endPx: number;
  readonly tick: { readonly from: ImagePoint; readonly to: ImagePoint };
}

function extentOf({ sign, middle, bands }: Row): Pick<SaidTicks, 'sign' | 'vFirst' | 'vLast' | 'vMiddle'> {
  const vMiddle = middle.band.vPx;
  return { sign, vMiddle, vFirst: bands[0]?.band.vPx ?? vMiddle, vLast: bands.at(-1)?.band.vPx ?? vMiddle };
}

/** How far from its predicted place a tick is looked for, in spacings. */
const PLACE_TOLERANCE = 0.3;
/** A tick must be seen in this share of the bands. */
const LEAST_BAND_SHARE = 0.6;

/** Looks for each numbered tick in each band near its predicted place, and puts a straight line through what was found. */
function collectTicks({ middle, bands }: Row, strip: Strip, line: ProjectiveLine): readonly CollectedTick[] {
  // Bands at the border of the row catch the rule's edge and the ends of the ticks.
  const inner = bands.length > 6 ? bands.slice(1, -1) : bands;
  const floors = inner.map(({ peaks }) => 0.5 * LEAST_STRENGTH_SHARE * medianOf(peaks.map(({ strength }) => strength)));
  // Plus 0, because -0 is another number to some.
  const first = Math.ceil(markAt(line, -1)) + 0;
  const last = Math.floor(markAt(line, strip.lengthPx + 1));
  const [vFirst, vLast] = [inner[0]?.band.vPx ?? 0, inner.at(-1)?.band.vPx ?? 0];
  const found: CollectedTick[] = [];
  let lean = 0;
  for (let number = first; number <= last; number += 1) {
    const uPx = placeOn(line, number);
    const within = PLACE_TOLERANCE * spacingAt(line, number);
    const seen = inner.flatMap(({ band }, index) => {
      const v = band.vPx - middle.band.vPx;
      const peak = peakNear(band, uPx + lean * v, within, floors[index] ?? 0);
      return peak ? [{ v, u: peak.uPx }] : [];
    });
    if (seen.length < LEAST_BAND_SHARE * inner.length) continue;
    const fitted = tickLine(seen);
    // Ticks next to each other lean alike: the next one is looked for along this one's lean.
    lean = 0.7 * lean + 0.3 * fitted.slope;
    const at = (v: number): ImagePoint => pointOf(strip, fitted.start + fitted.slope * (v - middle.band.vPx), v);
    found.push({ number, uPx: fitted.start, slope: fitted.slope, endPx: fitted.endPx, tick: { from: at(vFirst), to: at(vLast) } });
  }
  return found;
}
