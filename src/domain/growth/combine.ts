import type { BudgetSource } from '../measuring/quantity.ts';
import { consistencyOf } from './consistency.ts';
import { errorCorrelationOf, type MeasuredLength, standardUncertaintyOf } from './measuredLength.ts';

/**
 * Several readings of one length, weighted by inverse variance. Errors in common do not average out: pointing is
 * independent from reading to reading, the calibration is one per photo, the scale object and the height of the carapace
 * are taken as the same for all (law of propagation with correlated inputs, JCGM 100:2008, 5.2.2). Where readings differ by
 * more than their uncertainties allow, the result's is enlarged by the Birge ratio of `consistencyOf`.
 *
 * @returns null for an empty list.
 */
export function combineReadings(lengths: readonly MeasuredLength[]): MeasuredLength | null {
  const exact = lengths.filter((length) => !Number.isFinite(standardUncertaintyOf(length) ** -2));
  const counted = exact.length > 0 ? exact : lengths;
  const weights = counted.map((length) => (exact.length > 0 ? 1 : standardUncertaintyOf(length) ** -2));
  const mean = weightedMean(counted, weights);
  if (mean === null || exact.length > 0 || counted.length < 2) return mean;

  return enlarged(mean, Math.max(1, consistencyOf(counted)?.birgeRatio ?? 1));
}

/**
 * Left and right of one animal: two different lengths, so a plain mean, whose expanded uncertainty (k = 2) reaches both at
 * least. Null for an empty list.
 */
export function meanOfSides(lengths: readonly MeasuredLength[]): MeasuredLength | null {
  const mean = weightedMean(
    lengths,
    lengths.map(() => 1),
  );
  if (mean === null) return null;
  const farthestMm = Math.max(...lengths.map(({ valueMm }) => Math.abs(valueMm - mean.valueMm)));
  const lackingMm = Math.sqrt(Math.max(0, (farthestMm / 2) ** 2 - standardUncertaintyOf(mean) ** 2));
  return { ...mean, parts: { ...mean.parts, rest: Math.hypot(mean.parts.rest ?? 0, lackingMm) } };
}

function weightedMean(lengths: readonly MeasuredLength[], weights: readonly number[]): MeasuredLength | null {
  if (lengths.length === 0) return null;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const shares = weights.map((weight) => weight / total);
  const parts: Partial<Record<BudgetSource | 'rest', number>> = {};
  for (const source of new Set(lengths.flatMap((length) => Object.keys(length.parts) as (BudgetSource | 'rest')[]))) {
    parts[source] = Math.sqrt(
      lengths.reduce((outer, a, i) => {
        const row = lengths.reduce((inner, b, j) => {
          const correlation = i === j ? 1 : errorCorrelationOf(source, a, b);
          return inner + correlation * (shares[j] ?? 0) * (b.parts[source] ?? 0);
        }, 0);
        return outer + (shares[i] ?? 0) * (a.parts[source] ?? 0) * row;
      }, 0),
    );
  }
  return {
    valueMm: lengths.reduce((sum, length, i) => sum + (shares[i] ?? 0) * length.valueMm, 0),
    parts,
    calibratedBy: [...new Set(lengths.map((length) => length.calibratedBy))].sort().join(' '),
  };
}

function enlarged(length: MeasuredLength, factor: number): MeasuredLength {
  const parts = Object.fromEntries(Object.entries(length.parts).map(([source, part]) => [source, part * factor]));
  return { ...length, parts };
}
