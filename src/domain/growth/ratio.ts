import { type Estimate, estimateFrom } from '../measuring/quantity.ts';

/**
 * Growth ratio of one molt, later size over earlier size (so above 1 for growth; Dyar 1890 wrote it the other way up).
 * First-order propagation for a quotient (JCGM 100:2008, 5.1.6), the two sizes taken as uncorrelated: what they share, such
 * as one card used for both photos, would make the ratio better than stated, never worse.
 *
 * @param later size of the later instar, above zero, in the unit of `earlier`.
 * @param earlier size of the instar just before, above zero.
 */
export function growthRatio(later: Estimate, earlier: Estimate): Estimate {
  const value = later.value / earlier.value;
  const relative = Math.hypot(later.standardUncertainty / later.value, earlier.standardUncertainty / earlier.value);
  return estimateFrom(value, value * relative);
}
