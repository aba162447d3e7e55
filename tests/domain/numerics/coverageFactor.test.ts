import { describe, expect, test } from 'vitest';
import { coverageFactor, effectiveDegreesOfFreedom } from '../../../src/domain/numerics/coverageFactor.ts';

// JCGM 100:2008, H.1 (end gauge): contributions in nm with their degrees of freedom.
const END_GAUGE = [
  { standardUncertainty: 25, degreesOfFreedom: 18 },
  { standardUncertainty: 9.7, degreesOfFreedom: 25.6 },
  { standardUncertainty: 2.9, degreesOfFreedom: 50 },
  { standardUncertainty: 16.6, degreesOfFreedom: 2 },
];

describe('Welch and Satterthwaite', () => {
  test('give the end gauge of the GUM its 16.7 degrees of freedom, t = 2.92 and U = 93 nm', () => {
    const degrees = effectiveDegreesOfFreedom(END_GAUGE);
    // Printed 16.7; from the printed, rounded contributions it is 16.76.
    expect(Math.abs(degrees - 16.7)).toBeLessThan(0.1);
    expect(coverageFactor(degrees, 0.99)).toBeCloseTo(2.92, 2);
    const combined = Math.sqrt(END_GAUGE.reduce((sum, { standardUncertainty }) => sum + standardUncertainty ** 2, 0));
    expect(Math.round(combined)).toBe(32);
    expect(Math.round(coverageFactor(degrees, 0.99) * Math.round(combined))).toBe(93);
  });

  test('give the difference instrument its 25.6 (H.1.3.2)', () => {
    const comparator = [
      { standardUncertainty: 5.8, degreesOfFreedom: 24 },
      { standardUncertainty: 3.9, degreesOfFreedom: 5 },
      { standardUncertainty: 6.7, degreesOfFreedom: 8 },
    ];
    expect(effectiveDegreesOfFreedom(comparator)).toBeCloseTo(25.6, 0);
  });

  test('leave sources that are known exactly out of doubt', () => {
    expect(effectiveDegreesOfFreedom([{ standardUncertainty: 3, degreesOfFreedom: Number.POSITIVE_INFINITY }])).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});

describe('the coverage factor', () => {
  // JCGM 100:2008, table G.2, 95.45 %.
  test.each([
    [1, 13.97],
    [2, 4.53],
    [5, 2.65],
    [10, 2.28],
    [20, 2.13],
    [50, 2.05],
    [100, 2.025],
    [Number.POSITIVE_INFINITY, 2],
  ])('for %f degrees of freedom is %f', (degrees, factor) => {
    expect(coverageFactor(degrees, 0.9545)).toBeCloseTo(factor, 2);
  });
});
