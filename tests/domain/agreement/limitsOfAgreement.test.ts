import { expect, test } from 'vitest';
import { limitsOfAgreement } from '../../../src/domain/agreement/limitsOfAgreement.ts';

// Bland & Altman 1986, Lancet 327:307: peak expiratory flow rate, l/min, of 17 subjects, first readings of two meters.
const WRIGHT = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
const PAIRS = WRIGHT.map((value, index): [number, number] => [value, MINI[index] ?? Number.NaN]);

test('two meters of peak flow have the published bias and limits', () => {
  const agreement = limitsOfAgreement(PAIRS);
  expect(agreement?.pairs).toBe(17);
  // Published: -2.1, 38.8; with 2 instead of 1.96 from rounded values -79.7 and 75.5.
  expect(agreement?.bias).toBeCloseTo(-2.1, 1);
  expect(agreement?.standardDeviation).toBeCloseTo(38.8, 1);
  expect((agreement?.bias ?? 0) - 2 * (agreement?.standardDeviation ?? 0)).toBeCloseTo(-79.7, 0);
  expect((agreement?.bias ?? 0) + 2 * (agreement?.standardDeviation ?? 0)).toBeCloseTo(75.5, 0);
  expect(agreement?.limits.low).toBeCloseTo(-78.0973, 2);
  expect(agreement?.limits.high).toBeCloseTo(73.862, 2);
});

test('the confidence intervals are the published ones', () => {
  const agreement = limitsOfAgreement(PAIRS);
  // Published: bias -22.0 to 17.8. Those of the limits there are about 2, not 1.96, standard deviations; moved by that 1.6.
  expect(agreement?.biasInterval.low).toBeCloseTo(-22.0, 1);
  expect(agreement?.biasInterval.high).toBeCloseTo(17.8, 1);
  const shift = 0.04 * (agreement?.standardDeviation ?? 0);
  expect(Math.abs((agreement?.lowerLimitInterval.low ?? 0) - shift - -114.3)).toBeLessThan(0.3);
  expect(Math.abs((agreement?.upperLimitInterval.high ?? 0) + shift - 110.1)).toBeLessThan(0.3);
});

test('two pairs say nothing', () => {
  expect(limitsOfAgreement(PAIRS.slice(0, 2))).toBeNull();
});
