import { describe, expect, test } from 'vitest';
import { smallestDetectableDifference, technicalErrorOf } from '../../../src/domain/agreement/technicalError.ts';

/** Ulijaszek & Kerr 1999, British Journal of Nutrition 82:165: stature, m, of ten subjects read by four observers. */
const STATURE = [
  [0.865, 0.863, 0.863, 0.864],
  [1.023, 1.023, 1.027, 1.025],
  [0.982, 0.98, 0.989, 0.985],
  [0.817, 0.816, 0.812, 0.817],
  [0.901, 0.894, 0.9, 0.903],
  [0.88, 0.876, 0.881, 0.881],
  [0.948, 0.947, 0.947, 0.946],
  [0.906, 0.905, 0.907, 0.908],
  [0.924, 0.924, 0.926, 0.924],
  [0.989, 0.987, 1.002, 0.993],
];

/** The standardization exercise in the documentation of the R package anthrocheckr (nutriverse): weight, kg, read twice by one observer. */
const WEIGHT: readonly (readonly [number, number])[] = [
  [15.9, 16.0],
  [14.2, 14.3],
  [16.7, 16.7],
  [14.1, 14.2],
  [14.8, 14.6],
  [16.2, 16.1],
  [10.5, 10.5],
  [16.5, 16.4],
  [14.1, 14.3],
  [13.5, 13.5],
];

describe('the technical error of measurement', () => {
  test('of four observers has the published sums of squares, and the values that follow from them', () => {
    // Published per subject, times 100, to four places: .0003 .0011 .0046 .0017 .0045 .0017 .0002 .0005 .0003 .0133.
    const published = [0.0003, 0.0011, 0.0046, 0.0017, 0.0045, 0.0017, 0.0002, 0.0005, 0.0003, 0.0133];
    STATURE.forEach((row, index) => {
      const alone = technicalErrorOf([row]);
      expect(Math.abs(100 * 3 * (alone?.technicalError ?? 0) ** 2 - (published[index] ?? 0))).toBeLessThan(6e-5);
    });
    const all = technicalErrorOf(STATURE);
    expect(all?.degreesOfFreedom).toBe(30);
    expect(all?.technicalError).toBeCloseTo(0.00306322, 8);
    expect(all?.mean).toBeCloseTo(0.92375, 10);
    expect(all?.relativePercent).toBeCloseTo(0.331607, 5);
    expect(all?.reliability).toBeCloseTo(0.997548, 6);
  });

  test('between the first two of these observers is 2.0 mm', () => {
    const pairs = STATURE.map(([first = 0, second = 0]) => [first, second]);
    expect(1000 * (technicalErrorOf(pairs)?.technicalError ?? 0)).toBeCloseTo(2, 4);
  });

  test('within one observer has the published values', () => {
    const weight = technicalErrorOf(WEIGHT);
    expect(weight?.technicalError).toBeCloseTo(0.08062258, 8);
    expect(weight?.mean).toBeCloseTo(14.655, 10);
    expect(weight?.reliability).toBeCloseTo(1 - (0.08062258 / 1.793988) ** 2, 6);
  });

  test('says nothing without a repeat, and leaves single readings out', () => {
    expect(technicalErrorOf([[1], [2], []])).toBeNull();
    expect(technicalErrorOf([...WEIGHT, [99]])).toEqual(technicalErrorOf(WEIGHT));
  });

  test('of equal readings is nothing, and reliability then has no meaning', () => {
    expect(
      technicalErrorOf([
        [2, 2],
        [2, 2],
      ]),
    ).toMatchObject({ technicalError: 0, reliability: null });
  });

  test('tells the smallest difference to be detected: 2.77 times itself', () => {
    expect(smallestDetectableDifference(1)).toBeCloseTo(2.77, 2);
  });
});
