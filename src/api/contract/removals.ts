import { z } from 'zod';
import { type Endpoint, NOTHING } from './endpoint.ts';

/** What a removal took, and the key to take it back until the archive is closed. */
export const Removal = z
  .object({
    id: z.string(),
    specimens: z.int(),
    molts: z.int(),
    exuviae: z.int(),
    photos: z.int(),
    readings: z.int(),
    determinations: z.int(),
  })
  .meta({ id: 'Removal' });
export type Removal = z.infer<typeof Removal>;

export const removalEndpoints = {
  'GET /api/removals/preview': {
    summary: 'Counts what a removal would take, without taking it',
    query: z.object({ kind: z.enum(['specimen', 'molt', 'exuvia', 'photo', 'reading']), id: z.string() }),
    answer: Removal.omit({ id: true }).meta({ id: 'RemovalPreview' }),
  },
  'POST /api/removals/{removalId}/restoration': { summary: 'Put back everything one removal took', answer: NOTHING },
} as const satisfies Record<string, Endpoint>;
