import type { Estimate } from '../domain/measuring/quantity.ts';
import { formatEstimate, formatEstimateInInches, type RoundedEstimate } from '../domain/measuring/rounding.ts';

export type EstimateUnit = 'mm' | 'in' | '1';

/** An estimate in millimeters (or a plain number) rounded for the unit it is shown in, with a true minus sign. */
export function estimateInWords(estimate: Estimate, unit: EstimateUnit): RoundedEstimate {
  const { value, expandedUncertainty } = unit === 'in' ? formatEstimateInInches(estimate) : formatEstimate(estimate);
  return { value: value.replace('-', '−'), expandedUncertainty };
}

/** "15.73 mm ± 0.31 mm", for copying and for reading aloud. */
export function estimateAsText(estimate: Estimate, unit: EstimateUnit): string {
  const { value, expandedUncertainty } = estimateInWords(estimate, unit);
  const suffix = unit === '1' ? '' : ` ${unit}`;
  return `${value}${suffix} ± ${expandedUncertainty}${suffix}`;
}
