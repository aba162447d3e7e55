import { z } from 'zod';
import { type MoltsSince, moltsSinceSkin } from '../../molting/instars.ts';
import { type GrowthSeries, instarNow } from './growthRecord.ts';
import { meanAt } from './line.ts';
import { type LineBasis, lineBasisIn } from './lineBasis.ts';
import type { Pooled } from './pooledCabinet.ts';
import type { Pool } from './pooling.ts';
import { lineWithout } from './stepProbabilities.ts';

/** The latest measured skin whose place in the row is known, unless its size is in doubt; of its carapace. */
export const LastSkin = z
  .object({ moltId: z.string(), lengthMm: z.number().positive(), uncertaintyMm: z.number().min(0), instar: z.number() })
  .meta({ id: 'LastSkin' });
export type LastSkin = z.infer<typeof LastSkin>;

/** What the size of one animal is foretold from, today's and the next. */
export interface GrowthGround {
  /** In which it lives. */
  readonly instar: number;
  readonly lastSkin: LastSkin | null;
  readonly growth: LineBasis;
}

/** What is believed of one animal's growth, the molts it may have missed and the places of its skins with it. */
export interface GrowthBelief extends GrowthGround {
  readonly steps: readonly BelievedStep[];
  /** Of all molts up to today, oldest first. */
  readonly places: readonly SkinPlace[];
}

/** Where the skin of a molt stands. */
export interface SkinPlace {
  readonly moltId: string;
  /** That it shows; the likeliest where that is open. */
  readonly instar: number;
  /** How far the living animal is ahead of it. */
  readonly moltsSince: MoltsSince;
  /** Its carapace does not fit the skins around it: see `stepDoubt.ts`. */
  readonly inDoubt: boolean;
}

/** One step from a measured skin to the next measured one. */
export interface BelievedStep {
  readonly earlierMoltId: string;
  readonly laterMoltId: string;
  /** ln r of one molt here, by kin and all the other steps. */
  readonly expectedLogRatio: number;
  /** Of 0, 1 and 2 molts more than on record; sum to 1. */
  readonly probabilities: readonly number[];
  /** The keeper is sure of it. */
  readonly noneMissed: boolean;
}

/** Null for an animal that is not among the pooled ones. */
export function growthGroundIn({ today, series, pool }: Pooled, specimenId: string): GrowthGround | null {
  const one = series.get(specimenId);
  if (!one) return null;
  const instar = instarNow(one, today);
  const growth = lineBasisIn(pool, specimenId, instar - 0.5);
  return growth && { instar, lastSkin: lastSkinOf(one), growth };
}

/** Null for an animal that is not among the pooled ones. */
export function growthBeliefIn(pooled: Pooled, specimenId: string): GrowthBelief | null {
  const ground = growthGroundIn(pooled, specimenId);
  const one = pooled.series.get(specimenId);
  return ground && one ? { ...ground, steps: stepsOf(one, pooled.pool), places: placesOf(one) } : null;
}

function stepsOf({ record: { specimenId }, growth }: GrowthSeries, { tree, own, scatterVariance }: Pool): BelievedStep[] {
  const node = tree.animals.get(specimenId);
  const ofSteps = own.get(specimenId)?.probabilities;
  if (!node || !ofSteps) return [];
  const { prior, evidence } = node;
  return growth.map((step, index) => {
    const probabilities = ofSteps[index] ?? [];
    const line = lineWithout(step, probabilities, { prior, evidence, scatterVariance });
    const { earlierMoltId, laterMoltId, noneMissed } = step;
    return { earlierMoltId, laterMoltId, noneMissed, expectedLogRatio: meanAt(line, step.along), probabilities };
  });
}

function placesOf({ record, placed }: GrowthSeries): SkinPlace[] {
  const molts = placed.map(({ molt }) => molt);
  return placed.map(({ molt, instar, inDoubt }, index) => ({
    moltId: molt.id,
    instar,
    moltsSince: moltsSinceSkin(molts, index, record),
    inDoubt,
  }));
}

function lastSkinOf({ placed }: GrowthSeries): LastSkin | null {
  const skin = placed.findLast(({ size, stepKnown }) => size !== null && stepKnown);
  if (!skin?.size || skin.inDoubt) return null;
  const { moltId, lengthMm, uncertaintyMm } = skin.size;
  return { moltId, lengthMm, uncertaintyMm, instar: skin.instar };
}
