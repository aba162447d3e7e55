import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { type EdgeProfile, fitEdge, gaussianForm, normalDistribution } from '../../../src/domain/finding/edgeModel.ts';

/** A dark card ends at 0.3 px; its shadow, a third as bright as the ground, ends 1.5 px further out. */
function profile(inside: number, beyond: number): EdgeProfile {
  const samples = Float64Array.from({ length: 61 }, (_, index) => {
    const across = -12 + 0.4 * index - 0.3;
    const edge = jStat.normal.cdf(across, 0, 0.75);
    return inside * (1 - edge) + beyond * (0.3 * edge + 0.7 * jStat.normal.cdf(across - 1.5, 0, 0.75));
  });
  return { planes: [samples], firstPx: -12, stepPx: 0.4 };
}

describe('an edge beside its shadow', () => {
  it('is put in its place by the model of both, more than half a pixel off by a plain step', () => {
    const seen = profile(0.06, 0.4);
    const shape = { sigmaPx: 0.75, shadow: { widthPx: 1.5, sigmaPx: 0.75, ratio: 0.3 } };
    const fit = fitEdge(seen, -4, 4, 0.5, gaussianForm(shape));
    expect(fit.offsetPx).toBeCloseTo(0.3, 1);
    expect(fit.sumOfSquares).toBeLessThan(1e-5);
    expect(fit.levels[0]?.inside).toBeCloseTo(0.06, 3);
    expect(fit.levels[0]?.beyond).toBeCloseTo(0.4, 3);
    const plain = fitEdge(seen, -4, 4, 0.5, gaussianForm({ sigmaPx: 1, shadow: null }));
    expect(plain.offsetPx - 0.3).toBeGreaterThan(0.5);
    expect(plain.sumOfSquares).toBeGreaterThan(10 * fit.sumOfSquares);
  });
});

describe('the normal distribution function', () => {
  it('agrees with jStat to 1.5e-7 (Abramowitz & Stegun 7.1.26)', () => {
    for (let x = -5; x <= 5; x += 0.1) expect(Math.abs(normalDistribution(x) - jStat.normal.cdf(x, 0, 1))).toBeLessThan(1.6e-7);
  });
});
