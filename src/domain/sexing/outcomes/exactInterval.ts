import { betaQuantile } from '../../numerics/betaQuantile.ts';

/** What share of all such claims would be right: the limits of a 95 % interval. */
export interface ExactInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * The exact two-sided interval of a proportion (Clopper & Pearson 1934, Biometrika 26:404-413), by quantiles of the beta
 * distribution. With few counts it is wide: that is its point.
 *
 * @param right whole, 0 to total.
 * @param total whole, at least 1.
 * @throws RangeError outside these ranges.
 */
export function exactInterval(right: number, total: number, confidence = 0.95): ExactInterval {
  if (!(Number.isInteger(right) && Number.isInteger(total) && total >= 1 && right >= 0 && right <= total)) {
    throw new RangeError(`Expected counts with 0 <= right <= total, got ${right} of ${total}`);
  }
  const tail = (1 - confidence) / 2;
  return {
    low: right === 0 ? 0 : betaQuantile(tail, right, total - right + 1),
    high: right === total ? 1 : betaQuantile(1 - tail, right + 1, total - right),
  };
}
