import { describe, expect, test } from 'vitest';
import { BudgetSource, type Quantity } from '../../../../src/domain/measuring/quantity.ts';
import { areLegHeightsOpen, budgetAdvice } from '../../../../src/renderer/pages/bench/lengths/budgetAdvice.ts';

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

  test('speaks of a second share that weighs much as well', () => {
    const both = budgetAdvice(of({ pointing: 0.5, height: 0.49, calibration: 0.01 }, ['height-assumed']));
    expect(both).toMatch(/^Place the points enlarged.*Measure how high/);
    expect(budgetAdvice(of({ pointing: 0.8, height: 0.2 }, ['height-assumed']))).not.toContain('Measure how high');
  });

  test('calls the heights of legs open where they are most of what is uncertain of three or more', () => {
    const leg = (name: string, height: number) => ({ name, ...of({ height, pointing: 1 - height }, ['height-assumed']) });
    const open = ['leg-L1', 'leg-L2', 'leg-R4'].map((name) => leg(name, 0.9));
    expect(areLegHeightsOpen(open)).toBe(true);
    expect(areLegHeightsOpen(open.slice(1))).toBe(false);
    expect(areLegHeightsOpen(['leg-L1', 'leg-L2', 'leg-R4'].map((name) => leg(name, 0.4)))).toBe(false);
    expect(areLegHeightsOpen(['leg-L1-femur', 'leg-L1-tibia', 'leg-L1-tarsus'].map((name) => leg(name, 0.9)))).toBe(false);
    expect(areLegHeightsOpen(open.map((quantity) => ({ ...quantity, flags: [] })))).toBe(false);
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
