import type { Estimate } from '../../domain/measuring/quantity.ts';
import { inchesFromMm } from '../../domain/units.ts';

export interface EstimateWords {
  value: string;
  uncertainty: string;
  unit: string;
}

/**
 * An estimate rounded as it is shown: the expanded uncertainty U to two figures where they begin with 1 or 2, else to one
 * (never more than two: JCGM 100:2008, 7.2.6), the value to the same decimal place.
 */
export function estimateInWords(estimate: Estimate, unit: 'mm' | 'in' | '1'): EstimateWords {
  const scale = unit === 'in' ? inchesFromMm : (figure: number) => figure;
  const uncertainty = scale(estimate.expandedUncertainty);
  const decimals = decimalsFor(uncertainty);
  return {
    value: rounded(scale(estimate.value), decimals),
    uncertainty: rounded(uncertainty, decimals),
    unit: unit === '1' ? '' : unit,
  };
}

/** "15.7 mm ± 0.3 mm" for copying and for reading aloud. */
export function estimateAsText(estimate: Estimate, unit: 'mm' | 'in' | '1'): string {
  const words = estimateInWords(estimate, unit);
  const suffix = words.unit === '' ? '' : ` ${words.unit}`;
  return `${words.value}${suffix} ± ${words.uncertainty}${suffix}`;
}

/** Decimal places that keep one or two figures of the uncertainty; negative to the left of the point, 3 if there is none. */
function decimalsFor(uncertainty: number): number {
  if (!(uncertainty > 0)) return 3;
  const exponent = Math.floor(Math.log10(uncertainty));
  const leading = uncertainty / 10 ** exponent;
  return leading < 2.95 ? 1 - exponent : -exponent;
}

function rounded(figure: number, decimals: number): string {
  if (decimals >= 0) return figure.toFixed(decimals).replace('-', '−');
  const step = 10 ** -decimals;
  return String(Math.round(figure / step) * step).replace('-', '−');
}
