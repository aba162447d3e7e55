import type { Generator } from './generator.ts';

/** What a model gives when its inputs are drawn from their distributions. */
export interface Distribution {
  readonly mean: number;
  readonly standardDeviation: number;
  /** From the smallest. */
  readonly sorted: readonly number[];
  /** Draws for which the model had no value: the distribution is that of the others. */
  readonly failed: number;
}

/**
 * Of all draws at most this share may have no value: those lie at the ends, so leaving out 1 in 100 may already take from a 95 % interval
 * a fifth of what it leaves outside. Own judgment.
 */
const MOST_FAILED_SHARE = 0.01;

/**
 * Propagation of distributions by a Monte Carlo method: JCGM 101:2008 (GUM Supplement 1), 7.
 *
 * @param model draws its inputs and evaluates; null where it has no value for them.
 * @param draws how often, M; 1e4 give a standard uncertainty to about 1 %, an interval's end to about 2 %.
 * @throws RangeError as `distributionOf`.
 */
export function propagateDistributions(model: (draw: Generator) => number | null, draws: number, draw: Generator): Distribution {
  const values: number[] = [];
  for (let index = 0; index < draws; index += 1) {
    const value = model(draw);
    if (value !== null) values.push(value);
  }
  return distributionOf(values, draws);
}

/**
 * @param draws how many were made, those without a value among them.
 * @throws RangeError when fewer than two draws have a value, or more than one in a hundred has none.
 */
export function distributionOf(values: readonly number[], draws: number): Distribution {
  const failed = draws - values.length;
  if (values.length < 2 || failed > MOST_FAILED_SHARE * draws) {
    throw new RangeError(`Expected a value of at least 99 in 100 draws and of two, but ${failed} of ${draws} gave none`);
  }
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return { mean, standardDeviation: Math.sqrt(variance), sorted: values.toSorted((one, other) => one - other), failed };
}

/** The interval that leaves equal shares of the draws on both sides (JCGM 101:2008, 7.7.2). */
export function symmetricInterval({ sorted }: Distribution, probability: number): readonly [number, number] {
  const inside = Math.round(probability * sorted.length);
  const below = Math.round((sorted.length - inside) / 2);
  return [sorted[below] ?? Number.NaN, sorted[Math.min(below + inside, sorted.length - 1)] ?? Number.NaN];
}
