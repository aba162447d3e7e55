import type { Estimate } from '../../../../domain/measuring/quantity.ts';

/** Of the value. Our judgment: at half of it, two instars that follow each other can no longer be told apart by far. */
const MOST_RELATIVE_UNCERTAINTY = 0.5;

/** Whether a value says anything: one known to no better than half of itself is not told in figures. What is recorded stays. */
export function isUsable({ value, expandedUncertainty }: Estimate): boolean {
  return expandedUncertainty <= MOST_RELATIVE_UNCERTAINTY * Math.abs(value);
}

/** In place of the figures. */
export function unusableInWords(unit: 'mm' | '1'): string {
  return unit === 'mm' ? 'no usable length' : 'no usable value';
}
