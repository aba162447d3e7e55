import type { Estimate } from './quantity.ts';

/** Of the value. Our judgment: at half of it, two instars that follow each other can no longer be told apart by far. */
const MOST_RELATIVE_UNCERTAINTY = 0.5;

/** Whether a value says anything: one known to no better than half of itself is not told in figures. What is recorded stays. */
export function isUsable({ value, expandedUncertainty }: Pick<Estimate, 'value' | 'expandedUncertainty'>): boolean {
  return expandedUncertainty <= MOST_RELATIVE_UNCERTAINTY * Math.abs(value);
}
