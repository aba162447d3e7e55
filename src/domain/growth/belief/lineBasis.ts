import { z } from 'zod';
import { LineBelief } from './line.ts';
import type { Pool } from './pooling.ts';
import { kinShares, Shares } from './shares.ts';
import { WeighedReading } from './stepObservation.ts';

/** One quantity: what kin say of the animal's line, and its own steps. */
export const LineBasis = z
  .object({
    kin: LineBelief,
    kinShares: Shares.omit({ own: true }),
    rows: z.array(WeighedReading),
    scatterVariance: z.number().positive().describe('Of the logarithm of a single molt'),
    degreesOfFreedom: z.number().positive(),
  })
  .meta({ id: 'LineBasis' });
export type LineBasis = z.infer<typeof LineBasis>;

/**
 * What a pool says of one animal; null for an animal that is not in it.
 *
 * @param along the instar at which the shares of kin are told.
 */
export function lineBasisIn({ tree, own }: Pool, specimenId: string, along: number): LineBasis | null {
  const node = tree.animals.get(specimenId);
  const steps = own.get(specimenId);
  if (!node || !steps) return null;
  const { rows, scatterVariance, degreesOfFreedom } = steps;
  return { kin: node.prior, kinShares: kinShares(node, along), rows: [...rows], scatterVariance, degreesOfFreedom };
}
