import { inchesFromMm } from '../units.ts';
import type { Estimate } from './quantity.ts';

/** The two numbers of "value +- U", ready to print with a point as decimal sign. */
export interface RoundedEstimate {
  readonly value: string;
  readonly expandedUncertainty: string;
}

/** The expanded uncertainty is quoted to at most this many significant figures (JCGM 100:2008, 7.2.6). */
const UNCERTAINTY_FIGURES = 2;

/** Figures of a value whose uncertainty is zero. */
const EXACT_FIGURES = 6;

/** Rounds U to two significant figures and the value to the same digit (JCGM 100:2008, 7.2.6). Any unit. */
export function formatEstimate({ value, expandedUncertainty }: Estimate): RoundedEstimate {
  if (!(expandedUncertainty > 0 && Number.isFinite(expandedUncertainty) && Number.isFinite(value))) {
    return { value: printed(value, lastDigit(value, EXACT_FIGURES)), expandedUncertainty: printed(expandedUncertainty, 0) };
  }
  // Rounding can carry: 0.0996 becomes 0.10, whose second figure stands one place further left.
  const first = lastDigit(expandedUncertainty, UNCERTAINTY_FIGURES);
  const digit = lastDigit(roundTo(expandedUncertainty, first), UNCERTAINTY_FIGURES);
  return { value: printed(value, digit), expandedUncertainty: printed(expandedUncertainty, digit) };
}

/** The same length in inches, rounded by its own uncertainty in inches. */
export function formatEstimateInInches(estimateMm: Estimate): RoundedEstimate {
  return formatEstimate({
    value: inchesFromMm(estimateMm.value),
    standardUncertainty: inchesFromMm(estimateMm.standardUncertainty),
    expandedUncertainty: inchesFromMm(estimateMm.expandedUncertainty),
  });
}

/** Decimal place of the last of so many significant figures: 2 for hundredths, -1 for tens. */
function lastDigit(value: number, figures: number): number {
  if (value === 0 || !Number.isFinite(value)) return figures - 1;
  return figures - 1 - Number(value.toExponential().split('e')[1]);
}

/** Half away from zero on the shortest decimal that stands for the number, so that 1.005 becomes 1.01. */
function roundTo(value: number, decimals: number): number {
  const shifted = (digits: number, by: number): number => {
    const [mantissa, exponent] = digits.toExponential().split('e');
    return Number(`${mantissa}e${Number(exponent) + by}`);
  };
  return Math.sign(value) * shifted(Math.round(shifted(Math.abs(value), decimals)), -decimals);
}

function printed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return String(value);
  const rounded = roundTo(value, decimals);
  return (rounded === 0 ? 0 : rounded).toFixed(Math.max(0, decimals));
}
