import { z } from 'zod';

/** What is believed of one straight line, `level + trend (n - MIDDLE_INSTAR)`: means and covariance of both. */
export const LineBelief = z
  .object({
    level: z.number(),
    trend: z.number(),
    levelVariance: z.number().min(0),
    covariance: z.number(),
    trendVariance: z.number().min(0),
  })
  .meta({ id: 'LineBelief' });
export type LineBelief = z.infer<typeof LineBelief>;

/** Observations of such a line, summed up: the symmetric matrix `X'WX` and the vector `X'Wy` of the normal equations. */
export interface Evidence {
  readonly level: number;
  readonly both: number;
  readonly trend: number;
  readonly levelSum: number;
  readonly trendSum: number;
}

/** How far the lines of the members of a group lie apart: independent in level and trend. */
export interface Spread {
  readonly levelVariance: number;
  readonly trendVariance: number;
}

/** Levels are told at this instar, near the middle of a tarantula's life, where level and trend are least entangled. */
export const MIDDLE_INSTAR = 6;

export const NO_EVIDENCE: Evidence = { level: 0, both: 0, trend: 0, levelSum: 0, trendSum: 0 };

export function plus(a: Evidence, b: Evidence): Evidence {
  return {
    level: a.level + b.level,
    both: a.both + b.both,
    trend: a.trend + b.trend,
    levelSum: a.levelSum + b.levelSum,
    trendSum: a.trendSum + b.trendSum,
  };
}

export function minus(a: Evidence, b: Evidence): Evidence {
  return {
    level: a.level - b.level,
    both: a.both - b.both,
    trend: a.trend - b.trend,
    levelSum: a.levelSum - b.levelSum,
    trendSum: a.trendSum - b.trendSum,
  };
}

/** One value of the line at an instar, weighted by the inverse of its variance. */
export function evidenceOf(along: number, value: number, weight: number): Evidence {
  const x = along - MIDDLE_INSTAR;
  return { level: weight, both: weight * x, trend: weight * x * x, levelSum: weight * value, trendSum: weight * x * value };
}

/**
 * What evidence about a member says about its group, whose line the member's own lies about: (I + A T)^-1 of both parts, which
 * needs no inverse of A, so that a single observation says its share too.
 */
export function softened(evidence: Evidence, spread: Spread): Evidence {
  const p = 1 + evidence.level * spread.levelVariance;
  const q = evidence.both * spread.trendVariance;
  const r = evidence.both * spread.levelVariance;
  const s = 1 + evidence.trend * spread.trendVariance;
  const determinant = p * s - q * r;
  return {
    level: (s * evidence.level - q * evidence.both) / determinant,
    both: (s * evidence.both - q * evidence.trend) / determinant,
    trend: (p * evidence.trend - r * evidence.both) / determinant,
    levelSum: (s * evidence.levelSum - q * evidence.trendSum) / determinant,
    trendSum: (p * evidence.trendSum - r * evidence.levelSum) / determinant,
  };
}

/** Bayes' rule for normal means: P' = (I + P A)^-1 P, m' = m + P' (a - A m). */
export function informed(belief: LineBelief, evidence: Evidence): LineBelief {
  const { levelVariance: v, covariance: c, trendVariance: w } = belief;
  const p = 1 + v * evidence.level + c * evidence.both;
  const q = v * evidence.both + c * evidence.trend;
  const r = c * evidence.level + w * evidence.both;
  const s = 1 + c * evidence.both + w * evidence.trend;
  const determinant = p * s - q * r;
  const levelVariance = (s * v - q * c) / determinant;
  const covariance = (s * c - q * w) / determinant;
  const trendVariance = (p * w - r * c) / determinant;
  const levelPull = evidence.levelSum - evidence.level * belief.level - evidence.both * belief.trend;
  const trendPull = evidence.trendSum - evidence.both * belief.level - evidence.trend * belief.trend;
  return {
    level: belief.level + levelVariance * levelPull + covariance * trendPull,
    trend: belief.trend + covariance * levelPull + trendVariance * trendPull,
    levelVariance,
    covariance,
    trendVariance,
  };
}

/** What a group's line says of the next member. */
export function loosened(belief: LineBelief, spread: Spread): LineBelief {
  return {
    ...belief,
    levelVariance: belief.levelVariance + spread.levelVariance,
    trendVariance: belief.trendVariance + spread.trendVariance,
  };
}

export function meanAt(belief: LineBelief, along: number): number {
  return belief.level + belief.trend * (along - MIDDLE_INSTAR);
}

export function varianceAt(belief: LineBelief, along: number): number {
  const x = along - MIDDLE_INSTAR;
  return belief.levelVariance + 2 * x * belief.covariance + x * x * belief.trendVariance;
}
