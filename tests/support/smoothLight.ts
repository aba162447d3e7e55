import type { LightImage } from '../../src/domain/finding/light.ts';

/**
 * Light at a point by cubic convolution over sixteen pixels with the parameter -1/2 (Keys 1981, IEEE Transactions on Acoustics,
 * Speech, and Signal Processing 29:1153): exact for quadratic surfaces, and it blurs less than the bilinear one.
 */
export function smoothLightAt({ widthPx, heightPx, light }: LightImage, xPx: number, yPx: number): number {
  const left = Math.floor(xPx - 0.5);
  const top = Math.floor(yPx - 0.5);
  const across = keysWeights(xPx - 0.5 - left);
  const down = keysWeights(yPx - 0.5 - top);
  let sum = 0;
  for (let row = 0; row < 4; row += 1) {
    const y = Math.min(Math.max(top + row - 1, 0), heightPx - 1) * widthPx;
    let line = 0;
    for (let column = 0; column < 4; column += 1) {
      const x = Math.min(Math.max(left + column - 1, 0), widthPx - 1);
      line += (across[column] ?? 0) * (light[y + x] ?? 0);
    }
    sum += (down[row] ?? 0) * line;
  }
  return sum;
}

function keysWeights(t: number): readonly [number, number, number, number] {
  return [((2 - t) * t - 1) * t * 0.5, (t * t * (3 * t - 5) + 2) * 0.5, ((4 - 3 * t) * t + 1) * t * 0.5, (t - 1) * t * t * 0.5];
}
