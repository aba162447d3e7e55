import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { chiSquareTail } from '../../../src/domain/numerics/chiSquare.ts';

describe('tail of chi-square', () => {
  it('is 5 % and 1 % at the printed quantiles', () => {
    // Abramowitz & Stegun (1964), table 26.8.
    const printed: readonly (readonly [number, number, number])[] = [
      [1, 3.84146, 6.6349],
      [2, 5.99147, 9.21034],
      [5, 11.0705, 15.0863],
      [10, 18.307, 23.2093],
      [30, 43.7729, 50.8922],
    ];
    for (const [degrees, five, one] of printed) {
      expect(chiSquareTail(five, degrees)).toBeCloseTo(0.05, 5);
      expect(chiSquareTail(one, degrees)).toBeCloseTo(0.01, 5);
    }
  });

  it('has the closed form exp(-x / 2) for two degrees of freedom', () => {
    for (const x of [0, 0.01, 1, 3.9, 4.1, 60]) expect(chiSquareTail(x, 2)).toBeCloseTo(Math.exp(-x / 2), 13);
  });

  it('agrees with jstat on both sides of the mean', () => {
    for (const degrees of [1, 3, 4, 9, 24]) {
      for (const share of [0.05, 0.5, 1, 1.5, 4]) {
        expect(chiSquareTail(share * degrees, degrees)).toBeCloseTo(1 - jStat.chisquare.cdf(share * degrees, degrees), 9);
      }
    }
  });

  it('refuses what means nothing, and says 0 of an infinite one', () => {
    expect(chiSquareTail(Number.POSITIVE_INFINITY, 3)).toBe(0);
    expect(() => chiSquareTail(-1, 3)).toThrow(/chi-square/);
    expect(() => chiSquareTail(Number.NaN, 3)).toThrow(/chi-square/);
    expect(() => chiSquareTail(1, 1.5)).toThrow(/degrees/);
  });
});
