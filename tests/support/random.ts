/** Repeatable random numbers for simulations: the same seed gives the same test. */
export interface RandomSource {
  /** Uniform in [low, high). */
  uniform(low: number, high: number): number;
  /** Normal with mean 0. */
  normal(standardDeviation: number): number;
}

export function randomSource(seed: number): RandomSource {
  let state = seed >>> 0;
  // Mulberry32.
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    uniform: (low, high) => low + (high - low) * next(),
    normal: (standardDeviation) => standardDeviation * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function standardDeviationOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
