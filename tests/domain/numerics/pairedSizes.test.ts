import { describe, expect, it } from 'vitest';
import { growthRatio } from '../../../src/domain/growth/ratio.ts';
import { estimateFrom } from '../../../src/domain/measuring/quantity.ts';
import { leastSquares } from '../../../src/domain/numerics/leastSquares.ts';

/**
 * Carapace widths of 472 female Dungeness crabs before and after one molt, mm (Hankin DG, Diamond N, Mohr MS, Ianelli J 1989, J. Cons.
 * int. Explor. Mer 46:94-108). Means, deviations (n - 1) and correlation of the pairs, worked out apart from this project; the
 * pairs themselves are no part of it. A straight line depends on nothing else.
 */
const CRABS = {
  pairs: 472,
  before: { mean: 129.211864, deviation: 15.86452 },
  after: { mean: 143.897669, deviation: 14.640603 },
  correlation: 0.99036993,
  increment: { mean: 14.685805, deviation: 2.443656 },
} as const;

interface Pair {
  readonly beforeMm: number;
  readonly afterMm: number;
}

/** So many pairs with just these means, deviations and correlation: four corners, each as often. */
function pairsLike({ pairs, before, after, correlation }: typeof CRABS): Pair[] {
  const reach = Math.sqrt((pairs - 1) / pairs);
  const rest = Math.sqrt(1 - correlation ** 2);
  return Array.from({ length: pairs }, (_, index): Pair => {
    const along = index % 2 === 0 ? 1 : -1;
    const aside = index % 4 < 2 ? 1 : -1;
    return {
      beforeMm: before.mean + reach * before.deviation * along,
      afterMm: after.mean + reach * after.deviation * (correlation * along + rest * aside),
    };
  });
}

function line(pairs: readonly Pair[], from: keyof Pair, to: keyof Pair) {
  return leastSquares(
    pairs.map((pair) => [1, pair[from]]),
    pairs.map((pair) => pair[to]),
  );
}

describe('leastSquares on the growth of Dungeness crabs over one molt, which no fit of ln L on the instar meets', () => {
  const pairs = pairsLike(CRABS);

  it('has the pairs whose figures are known', () => {
    const increments = pairs.map(({ beforeMm, afterMm }) => afterMm - beforeMm);
    const mean = increments.reduce((sum, one) => sum + one, 0) / CRABS.pairs;
    const squares = increments.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    expect(mean).toBeCloseTo(CRABS.increment.mean, 5);
    expect(Math.sqrt(squares / (CRABS.pairs - 1))).toBeCloseTo(CRABS.increment.deviation, 4);
  });

  it('gives the published line back to the size before the molt', () => {
    const fit = line(pairs, 'afterMm', 'beforeMm');
    // Nolan D, Speed TP (2000) Stat Labs, Springer, chapter 7: pre = -25.214 + 1.07316 post, R2 0.98083 (from memory).
    expect(fit.coefficients[0]?.toFixed(3)).toBe('-25.214');
    expect(fit.coefficients[1]?.toFixed(5)).toBe('1.07316');
    expect(fit.rSquared.toFixed(5)).toBe('0.98083');
    expect(fit.residualStandardDeviation).toBeCloseTo(2.198721, 4);
  });

  it('rises by less than the size before does: proportional growth falls with size', () => {
    const fit = line(pairs, 'beforeMm', 'afterMm');
    // Worked out from the pairs apart from this project.
    expect(fit.coefficients[0]).toBeCloseTo(25.80258, 4);
    expect(fit.coefficients[1]).toBeCloseTo(0.91396475, 6);
    expect(fit.residualStandardDeviation).toBeCloseTo(2.029094, 4);
    const [intercept = 0, slope = 0] = fit.coefficients;
    const ratioAt = (beforeMm: number) => growthRatio(exact(intercept + slope * beforeMm), exact(beforeMm)).value;
    expect(ratioAt(60)).toBeGreaterThan(ratioAt(100));
    expect(ratioAt(100)).toBeGreaterThan(ratioAt(150));
  });
});

function exact(lengthMm: number) {
  return estimateFrom(lengthMm, 0);
}
