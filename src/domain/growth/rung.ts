import { z } from 'zod';
import { CalendarDay } from '../dates.ts';
import { Estimate } from '../measuring/quantity.ts';
import { Instar } from '../molting/instar.ts';
import { SkinSizes } from './skinSizes.ts';

/**
 * One instar of one animal as its skin shows it. A skin of molt n belongs to the instar that ended with molt n.
 * `step` counts instars from the first rung (0), gaps included; it is what the fit runs on. With an unknown absolute
 * instar, steps follow the recorded molts ("molt 3 on record").
 */
export const Rung = z
  .object({
    moltId: z.string(),
    exuviaId: z.string().nullable(),
    step: z.int().min(0),
    stepKnown: z.boolean().describe('false where instars without a molt on record lie near by and it is open on which side'),
    instar: Instar.nullable().describe('Absolute instar shown by the skin; null if unknown'),
    recordedMolt: z.int().min(1).describe('1 for the first molt on record'),
    presumed: z.boolean().describe('Nobody saw this molt: it was put in because growth tells of it, and its days say only its order'),
    noneMissedBefore: z.boolean().describe('The keeper is sure that no molt went by unseen between the one before and this one'),
    happenedFrom: CalendarDay,
    happenedTo: CalendarDay,
    recovered: z.boolean().nullable().describe('null when nothing is recorded about the skin'),
    photoId: z.string().nullable().describe('The skin photo its sizes come from, else any photo of the skin'),
    readingIds: z.array(z.string()),
    ...SkinSizes.shape,
    ratio: Estimate.nullable().describe('Carapace length over that of the previous instar; null across a gap'),
    skippedInstars: z.int().min(0).describe('Instars without a rung between the previous rung, or the acquisition, and this one'),
    daysSincePrevious: z
      .object({ from: z.int(), to: z.int() })
      .nullable()
      .describe('Since the previous recorded molt; a span when dates are spans'),
  })
  .meta({ id: 'Rung' });
export type Rung = z.infer<typeof Rung>;

export const Ladder = z
  .object({
    rungs: z.array(Rung),
  })
  .meta({ id: 'Ladder' });
export type Ladder = z.infer<typeof Ladder>;
