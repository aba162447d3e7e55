import { type BudgetSource, COVERAGE_FACTOR, type Quantity } from '../measuring/quantity.ts';

/** A length with what its variance is made of, so that lengths which share a cause of error can be averaged honestly. */
export interface MeasuredLength {
  readonly valueMm: number;
  /**
   * Standard uncertainty by source; `rest` is what the budget does not explain. Lengths are combined at k = 2: where few repeats gave
   * the quantity a wider interval, `rest` carries it.
   */
  readonly parts: Readonly<Partial<Record<BudgetSource | 'rest', number>>>;
  /** Names the calibrations behind it; equal names mean that their errors are the same error. */
  readonly calibratedBy: string;
}

export function measuredLength(quantity: Quantity, photoId: string): MeasuredLength {
  const parts: Partial<Record<BudgetSource | 'rest', number>> = {};
  let explained = 0;
  for (const { source, standardUncertainty } of quantity.budget) {
    parts[source] = Math.hypot(parts[source] ?? 0, standardUncertainty);
    explained += standardUncertainty ** 2;
  }
  parts.rest = Math.sqrt(Math.max(0, (quantity.estimate.expandedUncertainty / COVERAGE_FACTOR) ** 2 - explained));
  return { valueMm: quantity.estimate.value, parts, calibratedBy: photoId };
}

export function standardUncertaintyOf(length: MeasuredLength): number {
  return Math.hypot(...Object.values(length.parts));
}

/** Whether two lengths share the error of one cause (1) or have one each (0). */
export function errorCorrelationOf(source: BudgetSource | 'rest', a: MeasuredLength, b: MeasuredLength): 0 | 1 {
  switch (source) {
    case 'pointing':
    case 'rest':
      return 0;
    case 'calibration':
    case 'tilt-unknown':
    case 'camera-distance':
    case 'distortion':
      return a.calibratedBy === b.calibratedBy ? 1 : 0;
    case 'scale-object':
    case 'height':
      return 1;
  }
}
