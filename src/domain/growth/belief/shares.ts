import { z } from 'zod';
import { groupWithout, type KinNode } from './kinTree.ts';
import { informed, type LineBelief, varianceAt } from './line.ts';
import type { WeighedReading } from './stepObservation.ts';
import { evidenceFrom } from './stepProbabilities.ts';

export const Share = z.number().min(0).max(1);

/** What a forecast of one quantity rests on, as shares of its weight. Sum to 1. */
export const Shares = z
  .object({
    own: Share,
    siblings: Share,
    species: Share.describe('Of the species, siblings apart'),
    genus: Share.describe('Of the genus, the species apart'),
    family: Share.describe('Of other tarantulas on record'),
    prior: Share.describe('Of what is assumed of all tarantulas'),
  })
  .meta({ id: 'Shares' });
export type Shares = z.infer<typeof Shares>;
export type KinShares = Omit<Shares, 'own'>;

const SHARE_OF = { family: 'family', genus: 'genus', species: 'species', clutch: 'siblings', animal: 'own' } as const;

/**
 * How much of the weight at an instar comes from whom, an animal's own steps apart: at each group the share by which its other
 * members narrow the variance, which for a mean alone is the weight they get in it; what is left over passes to the group above.
 */
export function kinShares(animal: KinNode, along: number): KinShares {
  const shares = { siblings: 0, species: 0, genus: 0, family: 0, prior: 0 };
  let left = 1;
  for (let node = animal; node.parent; node = node.parent) {
    const group = node.parent;
    const before = varianceAt(group.prior, along);
    const after = varianceAt(groupWithout(node), along);
    const taken = before > 0 ? Math.min(1, Math.max(0, 1 - after / before)) : 0;
    const share = SHARE_OF[group.group];
    if (share !== 'own') shares[share] += left * taken;
    left *= 1 - taken;
  }
  shares.prior = left;
  return shares;
}

/** What kin say of a line, with the shares of whom, and the animal's own steps. */
interface Weighed {
  readonly kin: LineBelief;
  readonly kinShares: KinShares;
  readonly rows: readonly WeighedReading[];
}

/** Own steps take what they narrow; kin share the rest. */
export function sharesAt({ kin, kinShares, rows }: Weighed, along: number): Shares {
  const taken = 1 - varianceAt(informed(kin, evidenceFrom(rows)), along) / varianceAt(kin, along);
  const own = Math.min(1, Math.max(0, taken));
  const rest = 1 - own;
  return {
    own,
    siblings: kinShares.siblings * rest,
    species: kinShares.species * rest,
    genus: kinShares.genus * rest,
    family: kinShares.family * rest,
    prior: kinShares.prior * rest,
  };
}

/** How much of the change from instar to instar its own steps tell: few of them fix a level long before they fix a trend. */
export function ownTrendShare({ kin, rows }: Pick<Weighed, 'kin' | 'rows'>): number {
  if (kin.trendVariance <= 0) return 0;
  return Math.min(1, Math.max(0, 1 - informed(kin, evidenceFrom(rows)).trendVariance / kin.trendVariance));
}
