import { describe, expect, test } from 'vitest';
import { BudgetSource, type Quantity } from '../../../../src/domain/measuring/quantity.ts';
import { budgetAdvice } from '../../../../src/renderer/pages/bench/lengths/budgetAdvice.ts';

function of(shares: Partial<Record<BudgetSource, number>>, flags: Quantity['flags'] = []) {
  const budget = BudgetSource.options.flatMap((source) => {
    const share = shares[source];
    return share === undefined ? [] : [{ source, standardUncertainty: Math.sqrt(share), share }];
  });
  return { budget, flags };
}

describe('what narrows an uncertainty', () => {
  test('speaks of the largest share', () => {
    expect(budgetAdvice(of({ pointing: 0.3, height: 0.6, calibration: 0.1 }, ['height-assumed']))).toMatch(/^Measure how high/);
    expect(budgetAdvice(of({ pointing: 0.6, height: 0.3, calibration: 0.1 }, ['height-assumed']))).toMatch(/^Place the points enlarged/);
  });

  test('has something to do for every source, each time something else', () => {
    const all = BudgetSource.options.map((source) => budgetAdvice(of({ [source]: 1 })));
    expect(all.every((advice) => advice !== null && advice.length > 0)).toBe(true);
    expect(new Set(all).size).toBe(BudgetSource.options.length);
  });

  test('does not ask for a height that could not be corrected for', () => {
    expect(budgetAdvice(of({ height: 1 }, ['height-assumed', 'height-not-corrected']))).toMatch(/distance of the camera/);
    expect(budgetAdvice(of({ height: 1 }))).toMatch(/more closely/);
  });

  test('is silent where nothing is uncertain', () => {
    expect(budgetAdvice(of({}))).toBeNull();
  });
});
