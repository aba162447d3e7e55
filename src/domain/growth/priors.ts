import { type LineBelief, loosened, type Spread } from './belief/line.ts';

/** Whose lines lie about whose: a genus about the family's, a species about its genus', a clutch, an animal. */
export const GROUPS = ['genus', 'species', 'clutch', 'animal'] as const;
export type Group = (typeof GROUPS)[number];
export type Spreads = Readonly<Record<Group, Spread>>;

/** Where the fit begins, and how many observations these assumptions are worth against the cabinet's own. */
export interface ModelPrior {
  readonly family: LineBelief;
  readonly spreads: Spreads;
  readonly scatterVariance: number;
  /** Share of steps within which a molt went unrecorded and nobody knows. */
  readonly unseen: number;
}

function spread(level: number, trend: number): Spread {
  return { levelVariance: level ** 2, trendVariance: trend ** 2 };
}

function family(level: number, levelDeviation: number, trend: number, trendDeviation: number): LineBelief {
  return { level, trend, levelVariance: levelDeviation ** 2, covariance: 0, trendVariance: trendDeviation ** 2 };
}

/**
 * Share of steps between two molts on record within which another went by and nobody knows, before looking, and how many of
 * those hold one molt more rather than two: assumptions of ours.
 */
export const UNSEEN_STEPS = { share: 0.1, oneMolt: 0.8 } as const;

/**
 * ln of the days an instar lasts. About 80 days at the sixth instar, 95 % from 20 to 330, longer by 10 % with each: up to 8
 * molts in the first year and one a year when grown is common practice; Grammostola vachoni takes 184 days up to its eighth
 * molt and 365 from there to its eleventh (Zool. Anz. 293:37-45), Aglaoctenus lagotis lengthens by 7 % per instar (Moreira &
 * Del-Claro 2011, Zoologia 28:565-570). Single intervals scatter by about 0.3 about an animal's own line, as those of
 * Chiromachus ochropus do (Lourenco et al. 2011). How the total divides over the groups is an assumption of ours.
 */
export const INTERVAL_PRIOR: ModelPrior = {
  family: family(Math.log(80), 0.55, 0.1, 0.04),
  spreads: { genus: spread(0.35, 0.02), species: spread(0.25, 0.02), clutch: spread(0.1, 0.01), animal: spread(0.15, 0.02) },
  scatterVariance: 0.3 ** 2,
  unseen: UNSEEN_STEPS.share,
};

/**
 * ln of the growth ratio of one molt: about 1.3, 95 % from 1.10 to 1.54, an assumption of ours about the one figure published of a
 * tarantula, 1.38 (Grammostola vachoni, Zool. Anz. 293:37-45, 2021, doi:10.1016/j.jcz.2021.05.005). It falls slightly, since
 * proportional increases tend to decline (Hutchinson et al. 1997, Phil. Trans. R. Soc. B 352:113-138). Single ratios in
 * reared series scatter by 0.06 (Francke & Jones 1982, J. Arachnol. 10:223-239), relative 0.05. How the width divides over the
 * groups is an assumption of ours.
 */
export const GROWTH_PRIOR: ModelPrior = {
  family: family(Math.log(1.3), 0.05, -0.01, 0.008),
  spreads: { genus: spread(0.045, 0.005), species: spread(0.04, 0.005), clutch: spread(0.02, 0.003), animal: spread(0.03, 0.005) },
  scatterVariance: 0.05 ** 2,
  unseen: UNSEEN_STEPS.share,
};

/** What the assumptions on a spread, on the scatter and on the unseen share weigh, in members, steps and steps. */
export const PRIOR_WEIGHT = { spread: 6, scatter: 10, unseen: 60 } as const;

/** An animal's own scatter is drawn to the cabinet's as if that were so many steps of its own: an assumption of ours. */
export const COMMON_SCATTER_STEPS = 16;

/** Where no molt has a number, the first on record is taken to shed this instar, give or take: an assumption of ours. */
export const ASSUMED_FIRST_INSTAR = { instar: 4, deviation: 3 } as const;

/** What is believed of the line of an animal without kin: its family's, and how far all groups between may lie apart. */
export function lineOfAnyAnimal({ family, spreads }: ModelPrior): LineBelief {
  return GROUPS.reduce((belief, group) => loosened(belief, spreads[group]), family);
}

/** What is assumed of an animal of which nothing is known: of its own line, about which single instars scatter. */
export interface AssumedRange {
  readonly middle: number;
  readonly low95: number;
  readonly high95: number;
}

/** At `MIDDLE_INSTAR`: days of an interval, or a ratio. */
export function assumedRange(prior: ModelPrior): AssumedRange {
  const { level, levelVariance } = lineOfAnyAnimal(prior);
  return rangeOf(level, levelVariance);
}

/** How many times as large the same is one instar later. */
export function assumedChange(prior: ModelPrior): AssumedRange {
  const { trend, trendVariance } = lineOfAnyAnimal(prior);
  return rangeOf(trend, trendVariance);
}

function rangeOf(logarithm: number, variance: number): AssumedRange {
  const reach = 1.96 * Math.sqrt(variance);
  return { middle: Math.exp(logarithm), low95: Math.exp(logarithm - reach), high95: Math.exp(logarithm + reach) };
}
