import { z } from 'zod';
import { PendingRemoval, RemovableKind, RemovalCounts, Restoration } from '../../domain/removal.ts';
import type { Endpoint } from './endpoint.ts';

export const removalEndpoints = {
  'GET /api/removals': { summary: 'What was removed and can still be put back, newest first', answer: z.array(PendingRemoval) },
  'GET /api/removals/preview': {
    summary: 'Counts what a removal would take, without taking it',
    query: z.object({ kind: RemovableKind, id: z.string() }),
    answer: RemovalCounts,
  },
  'POST /api/removals/{removalId}/restoration': { summary: 'Put back everything one removal took', answer: Restoration },
} as const satisfies Record<string, Endpoint>;
