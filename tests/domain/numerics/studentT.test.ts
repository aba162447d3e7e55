import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { studentTQuantile, studentTTwoSided } from '../../../src/domain/numerics/studentT.ts';

const DEGREES = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 16, 20, 25, 30, 40, 50, 60, 100];
/** Two-sided 95 % and 99 %, as printed in any table of Student's t (recomputed with scipy). */
const T95 = [
  12.7062, 4.3027, 3.1824, 2.7764, 2.5706, 2.4469, 2.3646, 2.306, 2.2622, 2.2281, 2.1788, 2.1314, 2.1199, 2.086, 2.0595, 2.0423, 2.0211,
  2.0086, 2.0003, 1.984,
];
const T99 = [
  63.6567, 9.9248, 5.8409, 4.6041, 4.0321, 3.7074, 3.4995, 3.3554, 3.2498, 3.1693, 3.0545, 2.9467, 2.9208, 2.8453, 2.7874, 2.75, 2.7045,
  2.6778, 2.6603, 2.6259,
];
/** JCGM 100:2008, table G.2, column 95.45 %, for the degrees of freedom above. */
const T9545 = [13.97, 4.53, 3.31, 2.87, 2.65, 2.52, 2.43, 2.37, 2.32, 2.28, 2.23, 2.18, 2.17, 2.13, 2.11, 2.09, 2.06, 2.05, 2.04];

describe("quantiles of Student's t", () => {
  it('agree with the printed tables', () => {
    DEGREES.forEach((degrees, index) => {
      expect(studentTQuantile(0.975, degrees)).toBeCloseTo(T95[index] ?? Number.NaN, 4);
      expect(studentTQuantile(0.995, degrees)).toBeCloseTo(T99[index] ?? Number.NaN, 4);
    });
    T9545.forEach((printed, index) => {
      // The coverage of k = 2 exactly, of which 95.45 % is the rounded value.
      expect(studentTQuantile(0.977249868, DEGREES[index] ?? Number.NaN)).toBeCloseTo(printed, 2);
    });
  });

  it('agree with scipy to 12 digits', () => {
    const cases: readonly [number, number, number][] = [
      [0.975, 7, 2.3646242515927849],
      [0.975, 30, 2.0422724563012373],
      [0.995, 16, 2.9207816224251],
      [0.975, 34, 2.0322445093177186],
      [0.975, 48, 2.010634757624232],
    ];
    for (const [probability, degrees, expected] of cases) {
      expect(Math.abs(studentTQuantile(probability, degrees) / expected - 1)).toBeLessThan(1e-12);
    }
  });

  it('agree with the closed forms for one and two degrees of freedom', () => {
    for (const probability of [0.6, 0.9, 0.975, 0.995, 0.9999]) {
      expect(studentTQuantile(probability, 1) / Math.tan(Math.PI * (probability - 0.5))).toBeCloseTo(1, 11);
      const two = (2 * probability - 1) / Math.sqrt(2 * probability * (1 - probability));
      expect(studentTQuantile(probability, 2) / two).toBeCloseTo(1, 11);
    }
  });

  it('agree with jstat as far as it goes (about 1e-8)', () => {
    for (const degrees of [1.5, 3, 9, 27.3, 200]) {
      for (const probability of [0.001, 0.1, 0.4, 0.77, 0.99]) {
        const reference = jStat.studentt.inv(probability, degrees);
        expect(Math.abs(studentTQuantile(probability, degrees) - reference)).toBeLessThan(2e-7 * Math.max(1, Math.abs(reference)));
        expect(jStat.studentt.cdf(studentTQuantile(probability, degrees), degrees)).toBeCloseTo(probability, 7);
      }
    }
  });

  it('come near the normal distribution for many degrees of freedom', () => {
    expect(studentTQuantile(0.975, 1e7)).toBeCloseTo(1.959964, 5);
  });

  it('are the same on both sides of the middle', () => {
    for (const probability of [1e-6, 0.03, 0.4]) {
      expect(studentTQuantile(probability, 6.5)).toBeCloseTo(-studentTQuantile(1 - probability, 6.5), 6);
    }
    expect(studentTQuantile(0.5, 6.5)).toBe(0);
  });

  it('refuse probabilities and degrees of freedom that mean nothing', () => {
    expect(() => studentTQuantile(1, 5)).toThrow(/probability/);
    expect(() => studentTQuantile(Number.NaN, 5)).toThrow(/probability/);
    expect(() => studentTQuantile(0.9, 0)).toThrow(/degrees/);
    expect(() => studentTQuantile(0.9, Number.POSITIVE_INFINITY)).toThrow(/degrees/);
  });
});

describe("two-sided probability of Student's t", () => {
  it('is the inverse of the quantile, and the same on both sides', () => {
    for (const degrees of [1, 4, 27.3]) {
      for (const probability of [0.5, 0.05, 0.001]) {
        const t = studentTQuantile(1 - probability / 2, degrees);
        expect(studentTTwoSided(t, degrees)).toBeCloseTo(probability, 12);
        expect(studentTTwoSided(-t, degrees)).toBeCloseTo(probability, 12);
      }
    }
  });

  it('agrees with jstat', () => {
    expect(studentTTwoSided(2.1, 7)).toBeCloseTo(2 * (1 - jStat.studentt.cdf(2.1, 7)), 7);
  });

  it('is 1 at 0 and refuses no number', () => {
    expect(studentTTwoSided(0, 3)).toBe(1);
    expect(() => studentTTwoSided(Number.NaN, 3)).toThrow(/t and degrees/);
  });
});
