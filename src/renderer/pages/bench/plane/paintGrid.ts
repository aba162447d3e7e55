import type { ViewFromAbove } from '../../../../domain/measuring/fromAbove.ts';

const FINE = 'rgb(143 211 232 / 0.28)';
const MIDDLE = 'rgb(143 211 232 / 0.5)';
const NUMBERED = 'rgb(143 211 232 / 0.9)';
/** Closer than this, lines hide the picture. */
const LEAST_APART_PX = 5;

/** Numbers, at the strongest lines, stand this far apart: the closest that leaves room for one between. */
const NUMBERED_MM = [10, 20, 50];
/** Room for a number, in heights of its letters. */
const NUMBER_WIDTH = 2.6;

/**
 * Lines at whole millimeters of the plane, or at whole fives and more where these are too close; those at rounder numbers are stronger,
 * the strongest are numbered.
 *
 * @param shrunk how many times smaller than these pixels the view is seen.
 * @returns how far apart the lines are, mm.
 */
export function paintGrid(
  context: CanvasRenderingContext2D,
  { widthPx, heightPx, pxPerMm, topLeft }: ViewFromAbove,
  shrunk: number,
): number {
  const step = [1, 5, 10].find((apartMm) => (apartMm * pxPerMm) / shrunk >= LEAST_APART_PX) ?? 50;
  const fontPx = Math.max(Math.round(12 * shrunk), Math.round(heightPx / 40));
  context.font = `600 ${fontPx}px "Source Sans 3 Variable", sans-serif`;
  context.textBaseline = 'top';
  const numbered = NUMBERED_MM.find((apartMm) => apartMm * pxPerMm >= NUMBER_WIDTH * fontPx) ?? 100;
  const middle = [5, 10, 50].find((apartMm) => apartMm > step) ?? 100;
  const line = (atMm: number, isUpright: boolean) => {
    const atPx = (atMm - (isUpright ? topLeft.xMm : topLeft.yMm)) * pxPerMm;
    context.beginPath();
    context.moveTo(isUpright ? atPx : 0, isUpright ? 0 : atPx);
    context.lineTo(isUpright ? atPx : widthPx, isUpright ? heightPx : atPx);
    context.strokeStyle = atMm % numbered === 0 ? NUMBERED : atMm % middle === 0 ? MIDDLE : FINE;
    context.lineWidth = shrunk;
    context.stroke();
    if (atMm % numbered !== 0) return;
    context.lineWidth = 3 * shrunk;
    context.strokeStyle = 'rgb(0 0 0 / 0.6)';
    context.fillStyle = '#8fd3e8';
    const gapPx = 3 * shrunk;
    const [x, y] = isUpright ? [atPx + gapPx, gapPx] : [gapPx, atPx + gapPx];
    const number = `${atMm}`.replace('-', '−');
    if (x + context.measureText(number).width > widthPx || y + fontPx > heightPx) return;
    context.strokeText(number, x, y);
    context.fillText(number, x, y);
  };
  for (let mm = Math.ceil(topLeft.xMm / step) * step; (mm - topLeft.xMm) * pxPerMm < widthPx; mm += step) line(mm, true);
  for (let mm = Math.ceil(topLeft.yMm / step) * step; (mm - topLeft.yMm) * pxPerMm < heightPx; mm += step) line(mm, false);
  return step;
}
