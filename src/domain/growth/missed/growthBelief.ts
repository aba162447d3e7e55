import { readingPriors } from '../forecast/stepObservation.ts';
import type { GrowthStep } from '../measuredStep.ts';
import { GROWTH_PRIOR, lineOfAnyAnimal, UNSEEN_STEPS } from '../priors.ts';

/** Instars that may have gone by without a skin on record, and how often we expect each before looking. */
export const SKIPS = readingPriors(UNSEEN_STEPS.share).map((prior, skipped) => ({ skipped, prior }));

/** Growth of kin, ln r of single molts. */
export type KinLogRatios = readonly number[];

/** ln r = level + trend (n - n0) with the uncertainty of both, and the scatter of one molt about it. */
export interface GrowthBelief {
  readonly level: number;
  readonly trend: number;
  readonly levelVariance: number;
  readonly trendVariance: number;
  readonly covariance: number;
  /** Standard deviation of ln r of one molt. */
  readonly scatter: number;
  readonly degreesOfFreedom: number;
  readonly aroundStep: number;
}

/** Before any skin of its own or its kin is known; level and trend taken as told at the middle of the animal's own steps. */
const ANY_ANIMAL = lineOfAnyAnimal(GROWTH_PRIOR);
/** The assumed scatter of single ratios weighs as much as so many molts: an assumption of ours. */
const SCATTER_MOLTS = 8;
const ROUNDS = 6;

/**
 * What an animal's own steps, its kin and its family say about its growth, none of the steps taken at its word: each counts as
 * one, two or three molts as probable as that is, so that a skin that is missing elsewhere does not pull the ratio up
 * (expectation maximization, Dempster AP et al. 1977, J. R. Stat. Soc. B 39:1-38, over a normal linear model with conjugate priors).
 */
export function believeGrowth(steps: readonly GrowthStep[], kin: KinLogRatios = []): GrowthBelief {
  const aroundStep = steps.reduce((sum, step) => sum + middleOf(step), 0) / Math.max(1, steps.length);
  const start = priorBelief(kin, aroundStep);
  let belief = start;
  for (let round = 0; round < ROUNDS; round += 1) {
    const shares = steps.map((step) => skipProbabilities(step, belief));
    belief = updated(start, steps, shares, belief.scatter ** 2);
  }
  return belief;
}

/** How likely the observed growth of a step is with 0, 1 and 2 instars skipped; densities of ln r, so only their ratios mean anything. */
export function skipLikelihoods(step: GrowthStep, belief: GrowthBelief): number[] {
  return SKIPS.map(({ skipped }) => {
    const instars = step.instars + skipped;
    const along = middleOf(step) - belief.aroundStep;
    const expected = instars * (belief.level + belief.trend * along);
    const meanVariance = belief.levelVariance + 2 * along * belief.covariance + along ** 2 * belief.trendVariance;
    const variance = instars ** 2 * meanVariance + instars * belief.scatter ** 2 + step.uncertainty ** 2;
    return studentKernel((step.logRatio - expected) ** 2 / variance, belief.degreesOfFreedom) / Math.sqrt(variance);
  });
}

/** By Bayes' rule with the priors of `SKIPS`; sums to 1. */
export function skipProbabilities(step: GrowthStep, belief: GrowthBelief): number[] {
  const joint = skipLikelihoods(step, belief).map((likelihood, index) => likelihood * (SKIPS[index]?.prior ?? 0));
  const total = joint.reduce((sum, value) => sum + value, 0);
  return total > 0 ? joint.map((value) => value / total) : SKIPS.map(({ prior }) => prior);
}

/** Expected ln r of one molt within the step. */
export function expectedLogRatio(step: GrowthStep, belief: GrowthBelief): number {
  return belief.level + belief.trend * (middleOf(step) - belief.aroundStep);
}

function middleOf({ earlier, later }: GrowthStep): number {
  return (earlier.step + later.step) / 2;
}

/** Student's t density without its constant, as a function of t^2. */
function studentKernel(squared: number, degrees: number): number {
  return (1 + squared / degrees) ** (-(degrees + 1) / 2);
}

function priorBelief(kin: KinLogRatios, aroundStep: number): GrowthBelief {
  const mean = kin.reduce((sum, value) => sum + value, 0) / Math.max(1, kin.length);
  const squares = kin.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const freed = Math.max(0, kin.length - 1);
  const degreesOfFreedom = SCATTER_MOLTS + freed;
  const scatterVariance = (SCATTER_MOLTS * GROWTH_PRIOR.scatterVariance + squares) / degreesOfFreedom;
  const kinWeight = kin.length > 0 ? 1 / (scatterVariance / kin.length + GROWTH_PRIOR.spreads.animal.levelVariance) : 0;
  const weight = 1 / ANY_ANIMAL.levelVariance + kinWeight;
  return {
    level: (ANY_ANIMAL.level / ANY_ANIMAL.levelVariance + kinWeight * mean) / weight,
    trend: ANY_ANIMAL.trend,
    levelVariance: 1 / weight,
    trendVariance: ANY_ANIMAL.trendVariance,
    covariance: 0,
    scatter: Math.sqrt(scatterVariance),
    degreesOfFreedom,
    aroundStep,
  };
}

/** One round: level and trend by the normal equations of two unknowns, then the scatter about them. */
function updated(
  start: GrowthBelief,
  steps: readonly GrowthStep[],
  shares: readonly (readonly number[])[],
  scatterVariance: number,
): GrowthBelief {
  const rows = steps.flatMap((step, index) =>
    SKIPS.map(({ skipped }, k) => {
      const instars = step.instars + skipped;
      const variance = instars * scatterVariance + step.uncertainty ** 2;
      return { step, instars, along: middleOf(step) - start.aroundStep, share: shares[index]?.[k] ?? 0, variance };
    }),
  );
  let a = 1 / start.levelVariance;
  let b = 0;
  let c = 1 / start.trendVariance;
  let x = start.level * a;
  let y = start.trend * c;
  for (const { step, instars, along, share, variance } of rows) {
    const weight = share / variance;
    a += weight * instars ** 2;
    b += weight * instars ** 2 * along;
    c += weight * (instars * along) ** 2;
    x += weight * instars * step.logRatio;
    y += weight * instars * along * step.logRatio;
  }
  const determinant = a * c - b * b;
  const level = (c * x - b * y) / determinant;
  const trend = (a * y - b * x) / determinant;
  let squares = start.degreesOfFreedom * start.scatter ** 2;
  for (const { step, instars, along, share } of rows) {
    const residual = (step.logRatio - instars * (level + trend * along)) ** 2 - step.uncertainty ** 2;
    squares += (share * Math.max(0, residual)) / instars;
  }
  const degreesOfFreedom = start.degreesOfFreedom + steps.length;
  return {
    level,
    trend,
    levelVariance: c / determinant,
    trendVariance: a / determinant,
    covariance: -b / determinant,
    scatter: Math.sqrt(squares / degreesOfFreedom),
    degreesOfFreedom,
    aroundStep: start.aroundStep,
  };
}
