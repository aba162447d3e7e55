import type { Generator } from './generator.ts';

/** What a model gives when its inputs are drawn from their distributions. */
export interface Distribution {
  readonly mean: number;
  readonly standardDeviation: number;
  /** From the smallest. */
  readonly sorted: readonly number[];
}

/**
 * Propagation of distributions by a Monte Carlo method: JCGM 101:2008 (GUM Supplement 1), 7.
 *
 * @param model draws its inputs and evaluates; a draw for which it has no value (null) is left out.
 * @param draws how often, M; 1e4 give a standard uncertainty to about 1 %, an interval's end to about 2 %.
 * @throws RangeError when fewer than two draws have a value.
 */
export function propagateDistributions(model: (draw: Generator) => number | null, draws: number, draw: Generator): Distribution {
  const values: number[] = [];
  for (let index = 0; index < draws; index += 1) {
    const value = model(draw);
    if (value !== null) values.push(value);
  }
  return distributionOf(values);
}

export function distributionOf(values: readonly number[]): Distribution {
  if (values.length < 2) throw new RangeError(`Expected two or more values, got ${values.length}`);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return { mean, standardDeviation: Math.sqrt(variance), sorted: values.toSorted((one, other) => one - other) };
}

/** The interval that leaves equal shares of the draws on both sides (JCGM 101:2008, 7.7.2). */
export function symmetricInterval({ sorted }: Distribution, probability: number): readonly [number, number] {
  const inside = Math.round(probability * sorted.length);
  const below = Math.round((sorted.length - inside) / 2);
  return [sorted[below] ?? Number.NaN, sorted[Math.min(below + inside, sorted.length - 1)] ?? Number.NaN];
}
