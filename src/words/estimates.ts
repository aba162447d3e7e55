import { COVERAGE_FACTOR, type Estimate } from '../domain/measuring/quantity.ts';
import { formatEstimate, formatEstimateInInches, type RoundedEstimate } from '../domain/measuring/rounding.ts';

export type EstimateUnit = 'mm' | 'in' | '1';

/** An estimate in millimeters (or a plain number) rounded for the unit it is shown in, with a true minus sign. */
export function estimateInWords(estimate: Estimate, unit: EstimateUnit): RoundedEstimate {
  const { value, expandedUncertainty } = unit === 'in' ? formatEstimateInInches(estimate) : formatEstimate(estimate);
  return { value: value.replace('-', '−'), expandedUncertainty };
}

/** The k of an estimate, "2" or "2.37". */
export function coverageInWords({ coverageFactor }: Pick<Estimate, 'coverageFactor'>): string {
  const rounded = (coverageFactor ?? COVERAGE_FACTOR).toFixed(2);
  return Number(rounded) === COVERAGE_FACTOR ? String(COVERAGE_FACTOR) : rounded;
}

/** "k = 2.37" where it has to be said; null for the usual k = 2. */
export function unusualCoverage(estimate: Pick<Estimate, 'coverageFactor'>): string | null {
  const factor = coverageInWords(estimate);
  return factor === String(COVERAGE_FACTOR) ? null : `k = ${factor}`;
}

/** "15.73 mm ± 0.31 mm", for copying and for reading aloud; with k where it is not 2. */
export function estimateAsText(estimate: Estimate, unit: EstimateUnit): string {
  const { value, expandedUncertainty } = estimateInWords(estimate, unit);
  const suffix = unit === '1' ? '' : ` ${unit}`;
  const coverage = unusualCoverage(estimate);
  return `${value}${suffix} ± ${expandedUncertainty}${suffix}${coverage === null ? '' : ` (${coverage})`}`;
}

/** What the ± of these quantities is. */
export function plusMinusMeans(quantities: readonly { readonly estimate: Estimate }[]): string {
  return quantities.some(({ estimate }) => unusualCoverage(estimate) !== null)
    ? '± is the expanded uncertainty (about 95 %): k = 2, or the k beside it, larger because few repeats tell how well the points are placed.'
    : '± is the expanded uncertainty, k = 2 (about 95 %).';
}

/** In place of the figures of a value that is not usable. */
export function unusableInWords(unit: EstimateUnit): string {
  return unit === '1' ? 'no usable value' : 'no usable length';
}
