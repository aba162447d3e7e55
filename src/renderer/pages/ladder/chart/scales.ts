import { type ScaleLogarithmic, scaleLinear, scaleLog } from 'd3-scale';
import type { Bands } from '../../../../domain/growth/trend/bands.ts';
import type { Estimate } from '../../../../domain/measuring/quantity.ts';

/** Room round the drawing for the axes, px. */
export const FRAME = { topPx: 18, rightPx: 28, bottomPx: 46, leftPx: 58, heightPx: 380 } as const;

/**
 * Sizes on a logarithmic axis, so that equal ratios are equal steps; a little air above and below.
 *
 * @param sizes drawn with their bars; at least one, or something in `alsoMm`.
 * @param alsoMm further sizes that must find room.
 */
export function sizeScale(sizes: readonly Estimate[], alsoMm: readonly number[] = []): ScaleLogarithmic<number, number> {
  const lows = [...sizes.map(lowerEnd), ...alsoMm];
  const highs = [...sizes.map(({ value, expandedUncertainty }) => value + expandedUncertainty), ...alsoMm];
  return scaleLog()
    .domain([Math.min(...lows) / 1.08, Math.max(...highs) * 1.08])
    .range([FRAME.heightPx - FRAME.bottomPx, FRAME.topPx]);
}

/** Lower end of an error bar. A logarithm ends above zero, so a bar that reaches there is drawn to a tenth of the value. */
export function lowerEnd({ value, expandedUncertainty }: { value: number; expandedUncertainty: number }): number {
  return Math.max(value - expandedUncertainty, value / 10);
}

/** From coarse to fine: figures a person would write on a logarithmic axis. */
const MANTISSAS = [
  [1],
  [1, 2, 5],
  [1, 1.5, 2, 3, 5, 7],
  [1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 9],
  [1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.2, 2.4, 2.6, 2.8, 3, 3.3, 3.6, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5],
] as const;
const ENOUGH_TICKS = 4;
/** Two figures nearer than this would touch, px. */
const LEAST_APART_PX = 18;

/**
 * Round figures within a range above zero: the coarsest set that gives four, else the finest; evenly stepped ones where that gives not
 * two. Where they stand close, the rounder ones stay.
 */
export function logTicks(low: number, high: number): number[] {
  const ticks = candidates(low, high);
  const heightPx = FRAME.heightPx - FRAME.bottomPx - FRAME.topPx;
  const apart = (a: number, b: number) => (Math.abs(Math.log(a / b)) / Math.log(high / low)) * heightPx;
  const kept: number[] = [];
  for (const tick of ticks.toSorted((a, b) => coarseness(a) - coarseness(b)))
    if (kept.every((other) => apart(tick, other) >= LEAST_APART_PX)) kept.push(tick);
  return kept.sort((a, b) => a - b);
}

/** Which of the sets, from the coarsest, has a figure. */
function coarseness(tick: number): number {
  const mantissa = Number((tick / 10 ** Math.floor(Math.log10(tick) + 1e-9)).toPrecision(3));
  const at = MANTISSAS.findIndex((mantissas) => mantissas.some((one) => one === mantissa));
  return at === -1 ? MANTISSAS.length : at;
}

function candidates(low: number, high: number): number[] {
  let ticks: number[] = [];
  for (const mantissas of MANTISSAS) {
    ticks = [];
    for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power += 1) {
      for (const mantissa of mantissas) {
        const tick = Number((mantissa * 10 ** power).toPrecision(3));
        if (tick >= low && tick <= high) ticks.push(tick);
      }
    }
    if (ticks.length >= ENOUGH_TICKS) break;
  }
  return ticks.length >= 2 ? ticks : scaleLinear().domain([low, high]).ticks(ENOUGH_TICKS);
}

/** A band may open up to this many times beyond what it is fitted to before it is cut off: three skins alone tell next to nothing. */
const WIDEST_BAND = 1.6;

/**
 * The sizes between which the bands are drawn whole.
 *
 * @param drawnMm what else stands in the drawing, at least one size.
 * @returns `cut` where a band reaches further than the drawing does.
 */
export function bandRoom(bands: Bands, drawnMm: readonly number[]): { readonly mm: readonly number[]; readonly cut: boolean } {
  const middles = [...drawnMm, ...bands.at.map(({ middleMm }) => middleMm)];
  const lowest = Math.min(...middles) / WIDEST_BAND;
  const highest = Math.max(...middles) * WIDEST_BAND;
  const ends = bands.at.flatMap(({ oneLow95Mm, oneHigh95Mm }) => [oneLow95Mm, oneHigh95Mm]);
  return {
    mm: ends.map((end) => Math.min(highest, Math.max(lowest, end))),
    cut: ends.some((end) => end < lowest || end > highest),
  };
}
