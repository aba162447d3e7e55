import { z } from 'zod';
import { CalendarDay, Instant } from '../dates.ts';

export const MoltPosition = z.enum(['on-back', 'on-side', 'upright', 'not-seen']).meta({ id: 'MoltPosition' });
export type MoltPosition = z.infer<typeof MoltPosition>;

export const MoltOutcome = z
  .enum([
    'clean',
    'slow',
    'stuck',
    'wet',
    'limb-lost',
    'limb-regenerated',
    'deformed',
    'died',
    'skin-not-recovered',
    'presumed',
    'none-missed-before',
  ])
  .meta({
    id: 'MoltOutcome',
    description:
      'presumed: nobody saw it, growth tells of it; none-missed-before: the keeper is sure that no other went by unseen before this one',
  });
export type MoltOutcome = z.infer<typeof MoltOutcome>;

/**
 * One molt of one animal. The day is often known only as a span: last seen unmolted, found molted;
 * both are equal when the day is known.
 */
export const MoltDraft = z
  .object({
    happenedFrom: CalendarDay,
    happenedTo: CalendarDay,
    instarShed: z.int().min(1).max(60).nullable().describe('The instar that ended with this molt; null when only the order is known'),
    position: MoltPosition,
    outcomes: z.array(MoltOutcome).max(10),
    notes: z.string().max(20_000),
  })
  .meta({ id: 'MoltDraft' });
export type MoltDraft = z.infer<typeof MoltDraft>;

export const Molt = MoltDraft.extend({
  id: z.string(),
  specimenId: z.string(),
  version: z.int(),
  createdAt: Instant,
}).meta({ id: 'Molt' });
export type Molt = z.infer<typeof Molt>;
