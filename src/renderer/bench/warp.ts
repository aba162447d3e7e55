import { type PhotoMap, photoPointOf } from '../../domain/measuring/photoMap.ts';

/** Pixels in rows, red, green, blue and opacity a byte each; the top left pixel is centered at (0.5, 0.5). */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

const CHANNELS = 4;

/**
 * Draws a picture anew: each pixel of the result is what the source shows at the place the map takes it
 * to, bilinear between four pixels; transparent where that lies beyond the source.
 *
 * @param toSource where the places of the result lie in the source.
 */
export function warp(source: Pixels, toSource: PhotoMap, width: number, height: number): Uint8ClampedArray<ArrayBuffer> {
  const result = new Uint8ClampedArray(CHANNELS * width * height);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const at = photoPointOf(toSource, column + 0.5, row + 0.5);
      if (at) copy(source, at.xPx - 0.5, at.yPx - 0.5, result, CHANNELS * (row * width + column));
    }
  }
  return result;
}

/** @param x from the center of the first column of pixels; @param y from that of the first row. */
function copy({ width, height, data }: Pixels, x: number, y: number, result: Uint8ClampedArray, to: number): void {
  if (!(x > -0.5 && y > -0.5 && x < width - 0.5 && y < height - 0.5)) return;
  const left = Math.min(Math.max(Math.floor(x), 0), Math.max(width - 2, 0));
  const top = Math.min(Math.max(Math.floor(y), 0), Math.max(height - 2, 0));
  const across = Math.min(Math.max(x - left, 0), 1);
  const down = Math.min(Math.max(y - top, 0), 1);
  const first = CHANNELS * (top * width + left);
  const below = top + 1 < height ? first + CHANNELS * width : first;
  const step = left + 1 < width ? CHANNELS : 0;
  for (let channel = 0; channel < CHANNELS; channel += 1) {
    const upper = (1 - across) * (data[first + channel] ?? 0) + across * (data[first + step + channel] ?? 0);
    const lower = (1 - across) * (data[below + channel] ?? 0) + across * (data[below + step + channel] ?? 0);
    result[to + channel] = (1 - down) * upper + down * lower;
  }
}
