import { describe, expect, test } from 'vitest';
import { radialShiftOf } from '../../../src/domain/measuring/lens/radialShift.ts';
import type { PhotoMap } from '../../../src/domain/measuring/photoMap.ts';
import type { Matrix3 } from '../../../src/domain/numerics/matrix3.ts';
import { type Pixels, warp } from '../../../src/renderer/bench/warp.ts';

/** Red grows to the right, green downwards; opaque. */
function slope(width: number, height: number): Pixels {
  const data = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) data.set([4 * x, 4 * y, 0, 255], 4 * (y * width + x));
  return { width, height, data };
}

const through = (toPinhole: Matrix3): PhotoMap => ({ toPinhole });

describe('a warped picture', () => {
  test('is the same where nothing is moved', () => {
    const source = slope(40, 30);
    expect(warp(source, through([1, 0, 0, 0, 1, 0, 0, 0, 1]), 40, 30)).toEqual(source.data);
  });

  test('shows what lies where the map leads, by pixel centers at one half', () => {
    // Twice as large: the pixel (11, 5) of the result, centered at (11.5, 5.5), shows (5.75, 2.75), a quarter past (5.5, 2.5).
    const result = warp(slope(40, 30), through([0.5, 0, 0, 0, 0.5, 0, 0, 0, 1]), 80, 60);
    const at = 4 * (5 * 80 + 11);
    expect([...result.slice(at, at + 4)]).toEqual([21, 9, 0, 255]);
  });

  test('follows a projective map', () => {
    const plain = warp(slope(40, 30), through([1, 0, 0, 0, 1, 0, 0.01, 0, 1]), 40, 30);
    const [x, y] = [20.5, 10.5];
    const shown = x / (1 + 0.01 * x) - 0.5;
    expect(plain[4 * (10 * 40 + 20)]).toBe(Math.round(4 * shown));
    expect(plain[4 * (10 * 40 + 20) + 1]).toBe(Math.round(4 * (y / (1 + 0.01 * x) - 0.5)));
  });

  test('finds what a lens has shifted', () => {
    // A tenth inward in the corner, 25 pixels out; 15 pixels out it is 0.1 (15 / 25)^2 of them, 0.54 pixels.
    const shown = warp(
      slope(40, 30),
      { toPinhole: [1, 0, 0, 0, 1, 0, 0, 0, 1], radialShift: radialShiftOf({ widthPx: 40, heightPx: 30 }, -0.1) },
      40,
      30,
    );
    const [x, y] = [14.5 / 25, 0.5 / 25];
    const factor = 1 - 0.1 * (x * x + y * y);
    const at = 4 * (15 * 40 + 34);
    expect(shown[at]).toBe(Math.round(4 * (20 + 14.5 * factor - 0.5)));
    expect(shown[at + 1]).toBe(Math.round(4 * (15 + 0.5 * factor - 0.5)));
  });

  test('stays transparent beyond the picture and beyond the horizon', () => {
    const beside = warp(slope(40, 30), through([1, 0, 30, 0, 1, 0, 0, 0, 1]), 40, 30);
    expect(beside[4 * 9 + 3]).toBe(255);
    expect(beside[4 * 10 + 3]).toBe(0);
    const horizon = warp(slope(40, 30), through([1, 0, 0, 0, 1, 0, -0.03, 0, 1]), 40, 30);
    expect(horizon[4 * 36 + 3]).toBe(0);
  });
});
