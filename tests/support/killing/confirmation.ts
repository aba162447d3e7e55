import { z } from 'zod';

/** What the killed program says once the answer of the core has told it that something is kept. */
export const Confirmation = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('opened') }),
  z.object({ kind: z.literal('photo'), id: z.string(), sha256: z.string() }),
  z.object({ kind: z.literal('reading'), id: z.string(), version: z.int() }),
]);
export type Confirmation = z.infer<typeof Confirmation>;
