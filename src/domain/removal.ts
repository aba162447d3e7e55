import { z } from 'zod';
import { ObservationKind } from './care/observation.ts';
import { CalendarDay, Instant } from './dates.ts';

/** The kinds of record a keeper can remove. Determinations are not among them: they are withdrawn, with a reason. */
export const RemovableKind = z
  .enum(['specimen', 'molt', 'exuvia', 'photo', 'reading', 'observation', 'print-check'])
  .meta({ id: 'RemovableKind' });
export type RemovableKind = z.infer<typeof RemovableKind>;

/**
 * What a removal takes. Readings and calibrations belong to their photo: they go only with it. Photos of a removed
 * animal, molt or skin stay and belong to nothing (`photosUnassigned`).
 */
export const RemovalCounts = z
  .object({
    specimens: z.int(),
    molts: z.int(),
    exuviae: z.int(),
    photos: z.int(),
    photosUnassigned: z.int(),
    readings: z.int(),
    determinations: z.int(),
    observations: z.int(),
    liveSigns: z.int(),
  })
  .meta({ id: 'RemovalCounts' });
export type RemovalCounts = z.infer<typeof RemovalCounts>;

/** What a removal took, and the key to take it back until the archive is closed. */
export const Removal = RemovalCounts.extend({ id: z.string() }).meta({ id: 'Removal' });
export type Removal = z.infer<typeof Removal>;

/** What putting back left where it is: photos that were given to something else meanwhile, each with the code of the animal it is of now. */
export const Restoration = z
  .object({ photosElsewhere: z.array(z.object({ originalName: z.string(), code: z.string() })) })
  .meta({ id: 'Restoration' });
export type Restoration = z.infer<typeof Restoration>;

/** What was removed, as a keeper knows it. A molt, a skin and their days are those of the animal with this code. */
export const RemovedThing = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('specimen'), code: z.string() }),
    z.object({ kind: z.literal('molt'), code: z.string(), happenedFrom: CalendarDay, happenedTo: CalendarDay }),
    z.object({ kind: z.literal('exuvia'), code: z.string(), happenedFrom: CalendarDay, happenedTo: CalendarDay }),
    z.object({ kind: z.literal('photo'), originalName: z.string() }),
    z.object({ kind: z.literal('reading'), originalName: z.string(), pass: z.int() }),
    z.object({ kind: z.literal('observation'), code: z.string(), seen: ObservationKind, at: Instant, utcOffset: z.string() }),
    z.object({ kind: z.literal('print-check'), printer: z.string(), checkedOn: CalendarDay }),
    z.object({ kind: z.literal('sample-cabinet') }),
  ])
  .meta({ id: 'RemovedThing' });
export type RemovedThing = z.infer<typeof RemovedThing>;

/** A removal that can still be taken back. */
export const PendingRemoval = Removal.extend({ at: Instant, thing: RemovedThing }).meta({ id: 'PendingRemoval' });
export type PendingRemoval = z.infer<typeof PendingRemoval>;
