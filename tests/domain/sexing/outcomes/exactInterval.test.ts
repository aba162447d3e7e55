import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { exactInterval } from '../../../../src/domain/sexing/outcomes/exactInterval.ts';

describe('the exact interval of a proportion', () => {
  // Closed forms for none and all: 1 - (alpha / 2)^(1/n) and (alpha / 2)^(1/n). Source: Clopper & Pearson 1934, Biometrika 26:404-413.
  it.each([1, 5, 10, 29, 100])('none and all of %i have their closed forms', (total) => {
    expect(exactInterval(0, total)).toEqual({ low: 0, high: expect.closeTo(1 - 0.025 ** (1 / total), 12) });
    expect(exactInterval(total, total)).toEqual({ low: expect.closeTo(0.025 ** (1 / total), 12), high: 1 });
  });

  // Brown, Cai & DasGupta 2001, Statistical Science 16:101-133 and common tables; these figures from memory.
  it.each([
    [1, 10, 0.0025, 0.445],
    [5, 10, 0.1871, 0.8129],
    [8, 10, 0.4439, 0.9748],
  ])('%i of %i lie between %f and %f', (right, total, low, high) => {
    const interval = exactInterval(right, total);
    expect(interval.low).toBeCloseTo(low, 3);
    expect(interval.high).toBeCloseTo(high, 3);
  });

  it('agrees with a statistics library', () => {
    for (const total of [3, 7, 20, 64, 250]) {
      for (let right = 1; right < total; right += Math.max(1, Math.floor(total / 6))) {
        const { low, high } = exactInterval(right, total);
        expect(low).toBeCloseTo(jStat.beta.inv(0.025, right, total - right + 1), 7);
        expect(high).toBeCloseTo(jStat.beta.inv(0.975, right + 1, total - right), 7);
      }
    }
  });

  it('refuses counts that are none', () => {
    for (const [right, total] of [
      [0, 0],
      [3, 2],
      [-1, 4],
      [1.5, 4],
    ] as const)
      expect(() => exactInterval(right, total)).toThrow(RangeError);
  });
});
