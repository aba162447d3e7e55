import { describe, expect, it } from 'vitest';
import { fitGrowth } from '../../../src/domain/growth/growthFit.ts';
import { publishedSeries } from './publishedSeries.ts';

function sizesFrom(lengthsMm: readonly number[], firstInstar: number) {
  return lengthsMm.map((lengthMm, index) => ({ step: firstInstar + index, lengthMm }));
}

describe.each(publishedSeries)('$what', ({ firstInstar, lengthsMm, expected }) => {
  const fit = fitGrowth(sizesFrom(lengthsMm, firstInstar));

  it('gives the geometric-mean ratio to the printed digits', () => {
    expect(fit?.geometricMeanRatio.toFixed(4)).toBe(expected.geometricMeanRatio);
  });

  it('gives exp(b), the line and R2 to the printed digits', () => {
    expect(fit?.ratio.toFixed(4)).toBe(expected.ratio);
    if (expected.intercept !== undefined) expect(fit?.intercept.toFixed(5)).toBe(expected.intercept);
    if (expected.slope !== undefined) expect(fit?.slope.toFixed(5)).toBe(expected.slope);
    expect(fit?.rSquared.toFixed(5)).toBe(expected.rSquared);
  });

  it('gives the residual deviation where it is printed', () => {
    if (expected.residualStandardDeviation !== undefined)
      expect(fit?.residualStandardDeviation.toFixed(4)).toBe(expected.residualStandardDeviation);
    else expect(fit?.residualStandardDeviation).toBeGreaterThan(0);
  });
});

describe('fitGrowth', () => {
  it('needs three sizes', () => {
    expect(fitGrowth([])).toBeNull();
    expect(fitGrowth(sizesFrom([3], 0))).toBeNull();
    expect(fitGrowth(sizesFrom([3, 4], 0))).toBeNull();
    expect(fitGrowth(sizesFrom([3, 4, 5], 0))?.rungs).toBe(3);
  });

  it('finds an exact rule', () => {
    const fit = fitGrowth(sizesFrom([2, 2.6, 3.38, 4.394], 5));
    expect(fit?.ratio).toBeCloseTo(1.3, 10);
    expect(fit?.rSquared).toBeCloseTo(1, 12);
  });

  it('counts the steps of instars that are missing', () => {
    const whole = sizesFrom([2, 2.6, 3.38, 4.394, 5.7122], 3);
    const withGap = whole.filter(({ step }) => step !== 5);
    expect(fitGrowth(withGap)?.ratio).toBeCloseTo(1.3, 10);
    expect(fitGrowth(withGap)?.geometricMeanRatio).toBeCloseTo(1.3, 10);
  });

  it('says 1 for an animal that stayed the same', () => {
    const fit = fitGrowth(sizesFrom([8, 8, 8, 8], 1));
    expect(fit?.ratio).toBeCloseTo(1, 12);
    expect(fit?.geometricMeanRatio).toBe(1);
    expect(fit?.residualStandardDeviation).toBeCloseTo(0, 12);
  });

  it('says below 1 for an animal that shrank', () => {
    const fit = fitGrowth(sizesFrom([8, 7.6, 7.3], 1));
    expect(fit?.ratio).toBeLessThan(1);
    expect(fit?.ratio).toBeGreaterThan(0);
  });

  it('does not depend on which instar is called the first, nor on the unit', () => {
    const lengths = [1.6, 2.25, 2.96, 3.93, 5.21];
    const there = fitGrowth(sizesFrom(lengths, 1));
    const elsewhere = fitGrowth(
      sizesFrom(
        lengths.map((length) => length / 25.4),
        17,
      ),
    );
    expect(elsewhere?.ratio).toBeCloseTo(there?.ratio ?? 0, 12);
    expect(elsewhere?.rSquared).toBeCloseTo(there?.rSquared ?? 0, 10);
  });
});
