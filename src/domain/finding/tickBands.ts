import type { ImagePoint } from '../measuring/points.ts';
import { isInside, type LightImage, lightAt } from './light.ts';

/** A straight strip of the picture: u along the line through two points, v to its right-hand side (y down), both in px. */
export interface Strip {
  readonly origin: ImagePoint;
  readonly alongX: number;
  readonly alongY: number;
  readonly lengthPx: number;
}

/** How much a place along a band looks like a line across it, every half pixel. */
export interface Band {
  readonly vPx: number;
  readonly firstPx: number;
  readonly ridge: Float64Array;
}

export interface Peak {
  readonly uPx: number;
  readonly strength: number;
}

/** Between the places of a band. */
export const BAND_STEP_PX = 0.5;

export function stripThrough(from: ImagePoint, to: ImagePoint): Strip {
  const lengthPx = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
  return { origin: from, alongX: (to.xPx - from.xPx) / lengthPx, alongY: (to.yPx - from.yPx) / lengthPx, lengthPx };
}

export function pointOf({ origin, alongX, alongY }: Strip, uPx: number, vPx: number): ImagePoint {
  return { xPx: origin.xPx + uPx * alongX - vPx * alongY, yPx: origin.yPx + uPx * alongY + vPx * alongX };
}

/**
 * Mean light over a few lines along the strip, then the second derivative of a Gaussian: largest in the middle of a dark
 * line (Steger 1998, IEEE PAMI 20:113), or of a bright one when `sign` is -1.
 *
 * @param marginPx how far beyond both ends the band goes.
 */
export function bandAt(
  image: LightImage,
  strip: Strip,
  vPx: number,
  heightPx: number,
  sigmaPx: number,
  sign: 1 | -1,
  marginPx: number,
): Band {
  const half = Math.ceil((4 * sigmaPx) / BAND_STEP_PX);
  const count = Math.ceil((strip.lengthPx + 2 * marginPx) / BAND_STEP_PX) + 1;
  const samples = new Float64Array(count + 2 * half);
  const rows = Math.max(1, Math.round(heightPx));
  for (let at = 0; at < samples.length; at += 1) {
    const u = (at - half) * BAND_STEP_PX - marginPx;
    let sum = 0;
    for (let row = 0; row < rows; row += 1) {
      const v = vPx + row - (rows - 1) / 2;
      sum += lightAt(image, strip.origin.xPx + u * strip.alongX - v * strip.alongY, strip.origin.yPx + u * strip.alongY + v * strip.alongX);
    }
    samples[at] = sum / rows;
  }
  const kernel = Float64Array.from({ length: 2 * half + 1 }, (_, index) => {
    const x = ((index - half) * BAND_STEP_PX) / sigmaPx;
    return ((sign * BAND_STEP_PX) / (Math.sqrt(2 * Math.PI) * sigmaPx)) * (x * x - 1) * Math.exp((-x * x) / 2);
  });
  const ridge = new Float64Array(count);
  for (let at = 0; at < count; at += 1) {
    let sum = 0;
    for (let index = 0; index < kernel.length; index += 1) sum += (kernel[index] ?? 0) * (samples[at + index] ?? 0);
    // Relative to the light around, so that a gradient over the rule does not hide the ticks of its dark end.
    ridge[at] = sum / (0.02 + (samples[at + half] ?? 0));
  }
  return { vPx, firstPx: -marginPx, ridge };
}

/** Local maxima above a strength, between samples by the vertex of a parabola. */
export function peaksOf({ ridge, firstPx }: Band, leastStrength: number): readonly Peak[] {
  const peaks: Peak[] = [];
  for (let at = 1; at + 1 < ridge.length; at += 1) {
    const [before, peak, after] = [ridge[at - 1] ?? 0, ridge[at] ?? 0, ridge[at + 1] ?? 0];
    if (peak < leastStrength || !(peak > before && peak >= after)) continue;
    const shift = (before - after) / (2 * (before - 2 * peak + after));
    peaks.push({ uPx: firstPx + (at + shift) * BAND_STEP_PX, strength: peak });
  }
  return peaks;
}

/** The strongest maximum within a distance of a place; null when there is none. */
export function peakNear(band: Band, uPx: number, withinPx: number, leastStrength: number): Peak | null {
  const from = Math.max(1, Math.ceil((uPx - withinPx - band.firstPx) / BAND_STEP_PX));
  const to = Math.min(band.ridge.length - 2, Math.floor((uPx + withinPx - band.firstPx) / BAND_STEP_PX));
  let best: Peak | null = null;
  for (let at = from; at <= to; at += 1) {
    const [before, peak, after] = [band.ridge[at - 1] ?? 0, band.ridge[at] ?? 0, band.ridge[at + 1] ?? 0];
    if (peak < leastStrength || !(peak > before && peak >= after) || (best && best.strength >= peak)) continue;
    const shift = (before - after) / (2 * (before - 2 * peak + after));
    best = { uPx: band.firstPx + (at + shift) * BAND_STEP_PX, strength: peak };
  }
  return best;
}

/** How much of a band lies in the picture: the part of the strip on which ticks can be sought at all. */
export function isBandInside(image: LightImage, strip: Strip, vPx: number): boolean {
  const start = pointOf(strip, 0, vPx);
  const end = pointOf(strip, strip.lengthPx, vPx);
  return isInside(image, start.xPx, start.yPx) && isInside(image, end.xPx, end.yPx);
}
