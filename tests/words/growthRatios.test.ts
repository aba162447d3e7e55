import { describe, expect, test } from 'vitest';
import { ratiosOf } from '../../src/domain/growth/ratios.ts';
import { testCurvature } from '../../src/domain/growth/trend/curvature.ts';
import { fitRobust } from '../../src/domain/growth/trend/robustFit.ts';
import { fitWeighted } from '../../src/domain/growth/trend/weightedFit.ts';
import { consistencyInWords, curvatureInWords, ratioCautionInWords, ratiosInWords } from '../../src/words/growthRatios.ts';

function growthOf(lengthsMm: readonly number[]) {
  const sizes = lengthsMm.map((lengthMm, step) => ({ moltId: `molt-${step}`, step, lengthMm, uncertaintyMm: lengthMm * 0.005 }));
  return { ratios: ratiosOf(sizes), weighted: fitWeighted(sizes), robust: fitRobust(sizes), curvature: testCurvature(sizes) };
}

describe('growth ratios in words', () => {
  test('each figure has its own name, and the yardstick stands beside the animal’s own', () => {
    const rows = ratiosInWords(growthOf([4, 5.1, 6.3, 8, 9.9]));
    expect(rows.map(({ name }) => name)).toEqual([
      'Geometric mean',
      'Mean of the single steps',
      'Regression, exp(b)',
      'Weighted regression',
      'Robust line',
      'Przibram’s yardstick',
    ]);
    // (9.9 / 4)^(1/4) = 1.2543; cube root of two = 1.2599.
    expect(rows[0]?.ratio).toMatch(/^1\.254/);
    expect(rows[5]?.ratio).toBe('1.260');
  });

  test('two skins give neither regression nor scatter, and say so', () => {
    const growth = growthOf([4, 5]);
    expect(ratiosInWords(growth).map(({ name, means }) => [name, means])).toEqual([
      ['Geometric mean', 'from the first and the last skin alone, over the instars between'],
      ['Mean of the single steps', 'one step only'],
      ['Przibram’s yardstick', 'if each molt doubled the weight and nothing of the shape changed; no law'],
    ]);
    expect(curvatureInWords(growth)).toMatch(/from 4 measured skins up/);
  });

  test('falling ratios are told as falling, with how sure that is', () => {
    expect(curvatureInWords(growthOf([4, 5.6, 7.4, 9.33, 11.2, 12.9]))).toMatch(
      /^The ratio falls by about \d+\.\d % with each molt \(quadratic term: p/,
    );
    expect(curvatureInWords(growthOf([4, 5.1, 6.2, 8, 9.8, 12.5]))).toMatch(/^These skins do not show that the ratio changes/);
  });

  test('a molt that may be missing, or a skin that does not fit, is said beside the ratio', () => {
    expect(ratioCautionInWords([{ verdict: 'none' }], [])).toBeNull();
    expect(ratioCautionInWords([{ verdict: 'none' }, { verdict: 'possible' }], [])).toMatch(/^A molt may be missing/);
    expect(ratioCautionInWords([], ['molt-2'])).toMatch(/does not fit/);
  });

  test('readings that disagree send the keeper back to the photos', () => {
    const apart = { moltId: 'molt-1', readings: 2, chiSquared: 9, birgeRatio: 3, probability: 0.003, agree: false };
    expect(consistencyInWords(apart, () => 'Instar 7')).toMatch(/^Instar 7: its 2 readings differ .*Birge ratio 3\.00.*again\.$/);
    expect(consistencyInWords({ ...apart, birgeRatio: 1, agree: true }, () => 'Instar 7')).toMatch(/agree within/);
  });
});
