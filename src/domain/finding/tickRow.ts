import { medianOf } from '../numerics/median.ts';
import type { LightImage } from './light.ts';
import { type Band, bandAt, isBandInside, type Peak, peaksOf, type Strip } from './tickBands.ts';
import type { SaidTicks } from './tickEvidence.ts';

/** Bands are sought this far to both sides of the clicked line, as a share of its length, and at least so many px. */
const SEARCH_SHARE = 0.06;
const LEAST_SEARCH_PX = 14;
const BAND_HEIGHT_PX = 3;
const BAND_STRIDE_PX = 2;
/** Blur of the line finder, by the width of a fine engraved line in a usual picture. */
const SIGMA_PX = 1.1;
/** Weakest peak that counts, as a share of the band's strong ones; below lie the texture of wood and brushed steel. */
export const LEAST_STRENGTH_SHARE = 0.3;
/** Ticks next to each other differ in spacing by less than this. */
export const SPACING_TOLERANCE = 0.22;
/** Bands with at least this share of the best one's even peaks, by strength, cross the short ticks. */
const GOOD_BAND_SHARE = 0.6;
/** Fewer ticks than this are no graduation. */
export const LEAST_TICKS = 8;

interface ScoredBand {
  readonly band: Band;
  readonly peaks: readonly Peak[];
  /** Sum of the strengths of its evenly spaced peaks: texture has as many by chance, and beside dark ticks the bright gaps are even, but both are weak. */
  readonly evenStrength: number;
  readonly evenCount: number;
}

export interface Row {
  /** 1 for dark lines, -1 for bright ones. */
  readonly sign: 1 | -1;
  readonly middle: ScoredBand;
  readonly bands: readonly ScoredBand[];
}

/** The run of neighboring bands that cross the most evenly spaced lines, dark or bright. */
export function bestRow(image: LightImage, strip: Strip): Row | null {
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

export function extentOf({ sign, middle, bands }: Row): Pick<SaidTicks, 'sign' | 'vFirst' | 'vLast' | 'vMiddle'> {
  const vMiddle = middle.band.vPx;
  return { sign, vMiddle, vFirst: bands[0]?.band.vPx ?? vMiddle, vLast: bands.at(-1)?.band.vPx ?? vMiddle };
}
