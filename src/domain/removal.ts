import { z } from 'zod';

/** The kinds of record a keeper can remove. Determinations are not among them: they are withdrawn, with a reason. */
export const RemovableKind = z.enum(['specimen', 'molt', 'exuvia', 'photo', 'reading']).meta({ id: 'RemovableKind' });
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
  })
  .meta({ id: 'RemovalCounts' });
export type RemovalCounts = z.infer<typeof RemovalCounts>;

/** What a removal took, and the key to take it back until the archive is closed. */
export const Removal = RemovalCounts.extend({ id: z.string() }).meta({ id: 'Removal' });
export type Removal = z.infer<typeof Removal>;
