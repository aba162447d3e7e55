import { studentTQuantile } from './studentT.ts';

/** One source of a budget of independent sources: its contribution c u, and how well that is known. */
export interface Contribution {
  readonly standardUncertainty: number;
  /** Infinity when the uncertainty is taken as known. */
  readonly degreesOfFreedom: number;
}

/**
 * Effective degrees of freedom of a combined uncertainty (Welch-Satterthwaite; JCGM 100:2008, equation G.2b). The sources must
 * be independent.
 *
 * @returns Infinity when every source that counts is known exactly.
 */
export function effectiveDegreesOfFreedom(contributions: readonly Contribution[]): number {
  let variance = 0;
  let doubts = 0;
  for (const { standardUncertainty, degreesOfFreedom } of contributions) {
    variance += standardUncertainty ** 2;
    doubts += standardUncertainty ** 4 / degreesOfFreedom;
  }
  return doubts > 0 ? variance ** 2 / doubts : Number.POSITIVE_INFINITY;
}

/** Student's t is normal there to seven digits. */
const MANY_DEGREES = 1e7;

/**
 * The factor that makes a standard uncertainty an interval of the given two-sided level of confidence (JCGM 100:2008, G.4.1):
 * Student's t at the effective degrees of freedom, rounded down to a whole number.
 *
 * @param degreesOfFreedom at least 1.
 */
export function coverageFactor(degreesOfFreedom: number, level: number): number {
  const whole = Math.min(Math.floor(degreesOfFreedom), MANY_DEGREES);
  return studentTQuantile((1 + level) / 2, whole);
}
