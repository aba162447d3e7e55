import { z } from 'zod';

/**
 * An instar with how surely it is known. A known one is on record, or lies between two on record with no room for another
 * number. An inferred one is counted from the acquisition or from a numbered molt beside it: true if no molt was missed.
 * It is worked out anew each time and never becomes a record.
 */
export const Instar = z.object({ number: z.int().min(1), certainty: z.enum(['known', 'inferred']) }).meta({ id: 'Instar' });
export type Instar = z.infer<typeof Instar>;
