import { roundLengthMm } from '../../../../domain/plate/scaleBar.ts';

/** Space that the caption of each figure would like, and between figures, px. */
const WISHED_FIGURE_PX = 136;
const WISHED_GAP_PX = 24;
/** Room for the number of an instar alone. */
const LEAST_FIGURE_PX = 20;
const LEAST_GAP_PX = 4;

/** Below this height of the tallest plate nothing can be seen any more: then the row scrolls, with plates worth looking at. */
const LEAST_TALLEST_PX = 160;
const SCROLLING_TALLEST_PX = 320;

/** The row in which all figures stand: carapace middles lie on one line. */
export interface RowRoom {
  readonly carapaceLineMm: number;
  readonly heightMm: number;
}

/** A length at the common scale, which stands once on the row: zooming changes that alone and no figure is made anew. */
export function scaled(lengthMm: number): string {
  return `calc(${lengthMm} * var(--px-per-mm) * 1px)`;
}

/** How narrow a figure may be and how far from the next, so that all find room beside each other; captions give way. */
export interface RowSpacing {
  readonly narrowestPx: number;
  readonly gapPx: number;
}

interface PlateSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

interface RowPlace {
  readonly widthPx: number;
  /** For the tallest plate. */
  readonly heightPx: number;
  /** Figures without a plate. */
  readonly empty: number;
}

type RowSpace = RowPlace & RowSpacing;

/** Equal shares for all figures as far as the captions wish it; where that leaves too little of the tallest plate, the small ones take less. */
export function spacingOf(plates: readonly PlateSize[], place: RowPlace): RowSpacing {
  const figures = plates.length + place.empty;
  const gapPx = within(LEAST_GAP_PX, place.widthPx / figures / 6, WISHED_GAP_PX);
  const share = within(LEAST_FIGURE_PX, (place.widthPx - gapPx * (figures - 1)) / figures, WISHED_FIGURE_PX);
  const tallestMm = tallestOf(plates);
  const candidates = NARROWER.map((part) => ({ narrowestPx: Math.max(LEAST_FIGURE_PX, share * part), gapPx }));
  const enough = candidates.find((spacing) => fittingScale(plates, { ...place, ...spacing }) * tallestMm >= LEAST_TALLEST_PX);
  return enough ?? candidates.at(-1) ?? { narrowestPx: LEAST_FIGURE_PX, gapPx };
}

/** Parts of an equal share that a figure keeps at least. */
const NARROWER = [1, 0.8, 0.6, 0.45, 0.3];

/**
 * The largest common scale at which all plates stand side by side without scrolling and none is higher than allowed; where so
 * many cannot, that of the opening.
 *
 * @returns pixels per millimeter.
 */
export function fittingScale(plates: readonly PlateSize[], space: RowSpace): number {
  const { widthPx, heightPx, narrowestPx, gapPx, empty } = space;
  const tallestMm = tallestOf(plates);
  const freePx = widthPx - empty * narrowestPx - gapPx * (plates.length + empty - 1);
  // Widths that were shared out must not fail by a rounding.
  const fits = (pxPerMm: number) => plates.reduce((sum, { widthMm }) => sum + Math.max(narrowestPx, widthMm * pxPerMm), 0) <= freePx + 1e-6;
  const highest = heightPx / tallestMm;
  if (fits(highest)) return highest;
  let low = 0;
  let high = highest;
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low > 0 ? low : openingScale(0, plates, space);
}

/**
 * The scale to begin with: the fitting one, or where that leaves too little to see, a larger one at which the row scrolls and its end,
 * the newest two, stands whole in its place.
 *
 * @param plates oldest first.
 */
export function openingScale(fitting: number, plates: readonly PlateSize[], { widthPx, heightPx, gapPx }: RowSpace): number {
  const tallestMm = tallestOf(plates);
  if (fitting * tallestMm >= LEAST_TALLEST_PX) return fitting;
  const newestMm = plates.slice(-2).reduce((sum, { widthMm }) => sum + widthMm, 0);
  return Math.max(fitting, Math.min(Math.min(heightPx, SCROLLING_TALLEST_PX) / tallestMm, (widthPx - gapPx) / newestMm));
}

function tallestOf(plates: readonly PlateSize[]): number {
  return Math.max(...plates.map(({ heightMm }) => heightMm));
}

function within(least: number, value: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** A round length that fits into the given pixels. */
export function barLengthMm(pxPerMm: number, longestPx: number): number {
  return roundLengthMm(longestPx / pxPerMm);
}
