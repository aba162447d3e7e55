import { describe, expect, it } from 'vitest';
import { leastSquares, weightedLeastSquares } from '../../../src/domain/numerics/leastSquares.ts';
import { LONGLEY, logRelativeError, NORRIS, PONTIUS, type ReferenceFit } from '../../support/nistReferenceFits.ts';

function leastDigits(reference: ReferenceFit): { coefficients: number; spread: number } {
  const fit = leastSquares(reference.design, reference.observed);
  const digits = (computed: readonly number[], certified: readonly number[]): number[] =>
    certified.map((value, index) => logRelativeError(computed[index] ?? Number.NaN, value));
  return {
    coefficients: Math.min(...digits(fit.coefficients, reference.coefficients)),
    spread: Math.min(
      ...digits(fit.standardErrors, reference.standardErrors),
      logRelativeError(fit.residualStandardDeviation, reference.residualStandardDeviation),
      logRelativeError(fit.residualSumOfSquares, reference.residualSumOfSquares),
      logRelativeError(fit.rSquared, reference.rSquared),
    ),
  };
}

describe('least squares against the certified values of NIST StRD', () => {
  it('reproduces Norris to 12 digits', () => {
    const digits = leastDigits(NORRIS);
    expect(digits.coefficients).toBeGreaterThan(12);
    expect(digits.spread).toBeGreaterThan(12);
  });

  it('reproduces Pontius, a badly conditioned parabola, to 11 digits', () => {
    const digits = leastDigits(PONTIUS);
    expect(digits.coefficients).toBeGreaterThan(11);
    expect(digits.spread).toBeGreaterThan(11);
  });

  it('reproduces Longley, six nearly collinear predictors, to 10 digits', () => {
    const digits = leastDigits(LONGLEY);
    expect(digits.coefficients).toBeGreaterThan(10);
    expect(digits.spread).toBeGreaterThan(11);
  });
});

describe('least squares', () => {
  it('reports a perfect fit as such', () => {
    const fit = leastSquares(
      [
        [1, 1],
        [1, 2],
        [1, 3],
      ],
      [2, 4, 6],
    );
    expect(fit.coefficients[0]).toBeCloseTo(0, 12);
    expect(fit.coefficients[1]).toBeCloseTo(2, 12);
    expect(fit.rSquared).toBeCloseTo(1, 12);
    expect(fit.degreesOfFreedom).toBe(1);
  });

  it('has no spread to report without a degree of freedom', () => {
    const fit = leastSquares(
      [
        [1, 0],
        [1, 1],
      ],
      [5, 7],
    );
    expect(fit.residualStandardDeviation).toBe(0);
    expect(fit.standardErrors).toEqual([0, 0]);
    expect(fit.degreesOfFreedom).toBe(0);
  });

  it('refuses columns that depend on each other, and shapes that do not fit', () => {
    const dependent = [
      [1, 2, 3],
      [1, 4, 5],
      [1, 6, 7],
      [1, 9, 10],
    ];
    expect(() => leastSquares(dependent, [1, 2, 3, 4])).toThrow(/independent/);
    expect(() => leastSquares([[1, 0]], [1])).toThrow(/rows/);
    expect(() => leastSquares([[1], [1]], [1])).toThrow(/observations/);
    expect(() => leastSquares([[0], [0]], [1, 2])).toThrow(/zero/);
  });
});

describe('weighted least squares', () => {
  it('reproduces Norris and Longley, whatever the common weight', () => {
    for (const reference of [NORRIS, LONGLEY]) {
      const weights = reference.observed.map(() => 4);
      const fit = weightedLeastSquares(reference.design, reference.observed, weights);
      fit.coefficients.forEach((value, index) => {
        expect(logRelativeError(value, reference.coefficients[index] ?? Number.NaN)).toBeGreaterThan(10);
      });
      fit.standardErrors.forEach((value, index) => {
        expect(logRelativeError(value, reference.standardErrors[index] ?? Number.NaN)).toBeGreaterThan(10);
      });
    }
  });

  it('counts an observation of weight 3 as three of weight 1', () => {
    const once = weightedLeastSquares(
      [
        [1, 0],
        [1, 1],
        [1, 2],
      ],
      [1, 3, 4],
      [1, 3, 1],
    );
    const repeated = leastSquares(
      [
        [1, 0],
        [1, 1],
        [1, 1],
        [1, 1],
        [1, 2],
      ],
      [1, 3, 3, 3, 4],
    );
    once.coefficients.forEach((value, index) => {
      expect(value).toBeCloseTo(repeated.coefficients[index] ?? Number.NaN, 12);
    });
    expect(once.residualSumOfSquares).toBeCloseTo(repeated.residualSumOfSquares, 12);
  });

  it('refuses a weight of zero', () => {
    expect(() => weightedLeastSquares([[1], [1]], [1, 2], [1, 0])).toThrow(/weights/);
  });
});
