import { describe, expect, it } from 'vitest';
import { factorTo, type LightImage, lightAt, reduceLight } from '../../../src/domain/finding/light.ts';
import { decodeSrgb, encodeSrgb } from '../../../src/domain/numerics/srgb.ts';
import { smoothLightAt } from '../../support/smoothLight.ts';

function imageOf(widthPx: number, heightPx: number, light: (xPx: number, yPx: number) => number): LightImage {
  return {
    widthPx,
    heightPx,
    light: Float32Array.from({ length: widthPx * heightPx }, (_, index) =>
      light((index % widthPx) + 0.5, Math.floor(index / widthPx) + 0.5),
    ),
  };
}

describe('light between pixel centers', () => {
  it('is exact for a plane, the center of the top-left pixel being (0.5, 0.5)', () => {
    const image = imageOf(7, 5, (x, y) => 0.1 + 0.05 * x + 0.03 * y);
    expect(lightAt(image, 0.5, 0.5)).toBeCloseTo(0.1 + 0.025 + 0.015, 6);
    expect(lightAt(image, 3.2, 2.9)).toBeCloseTo(0.1 + 0.16 + 0.087, 6);
  });

  it('is exact for a quadratic surface by cubic convolution (Keys 1981)', () => {
    const surface = (x: number, y: number) => 0.2 + 0.01 * x * x - 0.02 * x * y + 0.015 * y * y;
    expect(smoothLightAt(imageOf(9, 9, surface), 4.3, 5.1)).toBeCloseTo(surface(4.3, 5.1), 5);
  });

  it('is that of the border beyond it', () => {
    const image = imageOf(4, 4, (x) => x / 4);
    expect(lightAt(image, -3, 2)).toBeCloseTo(0.125, 6);
    expect(lightAt(image, 99, 2)).toBeCloseTo(0.875, 6);
  });
});

describe('a picture made smaller', () => {
  it('keeps places: a point of it is the factor times as far in the larger one', () => {
    const image = imageOf(20, 12, (x, y) => 0.02 * x + 0.01 * y);
    const smaller = reduceLight(image, 4);
    expect([smaller.widthPx, smaller.heightPx]).toEqual([5, 3]);
    expect(lightAt(smaller, 2.3, 1.6)).toBeCloseTo(lightAt(image, 9.2, 6.4), 5);
  });

  it('drops the pixels that fill no block', () => {
    expect(
      reduceLight(
        imageOf(11, 7, () => 0.5),
        3,
      ).light,
    ).toEqual(new Float32Array(6).fill(0.5));
  });

  it('refuses a factor that is no whole number', () => {
    expect(() =>
      reduceLight(
        imageOf(4, 4, () => 0),
        1.5,
      ),
    ).toThrow(RangeError);
  });

  it('is reduced by the least factor that suffices', () => {
    expect(factorTo({ widthPx: 4032, heightPx: 3024 }, 2048)).toBe(2);
    expect(factorTo({ widthPx: 2016, heightPx: 1512 }, 2048)).toBe(1);
  });
});

describe('encoding light', () => {
  it('is undone by decoding', () => {
    for (let light = 0; light <= 1; light += 0.01) expect(decodeSrgb(encodeSrgb(light))).toBeCloseTo(light, 7);
  });
});
