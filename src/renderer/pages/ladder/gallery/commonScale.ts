import { roundLengthMm } from '../../../../domain/plate/sheet.ts';

/** Space that each figure of the gallery takes at least, for its caption, and between figures, px. */
export const NARROWEST_FIGURE_PX = 136;
export const GALLERY_GAP_PX = 24;

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

/**
 * The largest common scale at which all plates stand side by side without scrolling and none is higher than allowed. Where
 * that would leave too little to see, a larger one at which the row scrolls.
 *
 * @returns pixels per millimeter.
 */
export function fittingScale(
  plates: readonly { widthMm: number; heightMm: number }[],
  room: { widthPx: number; heightPx: number; reservedPx: number },
): number {
  const tallestMm = Math.max(...plates.map(({ heightMm }) => heightMm));
  const freePx = room.widthPx - room.reservedPx - GALLERY_GAP_PX * (plates.length - 1);
  const fits = (pxPerMm: number) =>
    plates.reduce((sum, { widthMm }) => sum + Math.max(NARROWEST_FIGURE_PX, widthMm * pxPerMm), 0) <= freePx;
  const highest = room.heightPx / tallestMm;
  if (fits(highest)) return highest;
  let low = 0;
  let high = highest;
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low * tallestMm < LEAST_TALLEST_PX ? Math.min(highest, SCROLLING_TALLEST_PX / tallestMm) : low;
}

/** A round length that fits into the given pixels. */
export function barLengthMm(pxPerMm: number, longestPx: number): number {
  return roundLengthMm(longestPx / pxPerMm);
}
