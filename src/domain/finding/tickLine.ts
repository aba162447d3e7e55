import { medianOf } from '../numerics/median.ts';

/** The middle line of a tick across the bands that see it: u = start + slope v, px along the strip and across it. */
export interface TickLine {
  readonly start: number;
  readonly slope: number;
  /** Standard uncertainty of u at either end of the tick. */
  readonly endPx: number;
}

type Seen = readonly { readonly v: number; readonly u: number }[];

/** Places nearer to the line than three of these belong to it. */
const LEAST_SCALE_PX = 0.05;
/** Bands three lines high, two apart, share a third of what they see with each neighbor: so many of them count as one. */
const BANDS_ALIKE = 5 / 3;

/** By least squares, once more without what lies beyond three scaled median deviations. */
export function tickLine(seen: Seen): TickLine {
  const first = leastSquareLine(seen);
  const off = seen.map(({ v, u }) => Math.abs(u - first.start - first.slope * v));
  const limit = 3 * Math.max(LEAST_SCALE_PX, 1.4826 * medianOf(off));
  const kept = seen.filter((_, index) => (off[index] ?? 0) <= limit);
  const { start, slope, middle, square } = leastSquareLine(kept);
  const squares = kept.reduce((sum, { v, u }) => sum + (u - start - slope * v) ** 2, 0);
  const variance = (BANDS_ALIKE * squares) / Math.max(1, kept.length - 2 * BANDS_ALIKE);
  const reach = Math.max(...kept.map(({ v }) => Math.abs(v - middle)));
  return { start, slope, endPx: Math.sqrt(variance * (1 / kept.length + (square > 0 ? reach ** 2 / square : 0))) };
}

function leastSquareLine(points: Seen) {
  const n = points.length;
  const middle = points.reduce((sum, point) => sum + point.v, 0) / n;
  const u = points.reduce((sum, point) => sum + point.u, 0) / n;
  const square = points.reduce((sum, point) => sum + (point.v - middle) ** 2, 0);
  const product = points.reduce((sum, point) => sum + (point.v - middle) * (point.u - u), 0);
  const slope = square > 0 ? product / square : 0;
  return { start: u - slope * middle, slope, middle, square };
}
