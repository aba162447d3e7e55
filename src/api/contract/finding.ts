import { z } from 'zod';
import { FoundScale, ScaleProposal } from '../../domain/finding/foundScale.ts';
import { RoughScale } from '../../domain/finding/refinement.ts';
import { BYTES, type Endpoint } from './endpoint.ts';

export const findingEndpoints = {
  'GET /api/photos/{photoId}/proposals': {
    summary: 'Scale objects that are seen in a photo without a click, the clearest first; nothing is saved',
    answer: z.array(ScaleProposal),
  },
  'POST /api/photos/{photoId}/refinement': {
    summary: 'Marks refined on the edges of the photo, from where a keeper has pointed roughly; nothing is saved',
    body: RoughScale,
    answer: FoundScale,
  },
  'GET /api/scale-card.pdf': {
    summary: 'A sheet with two scale cards, to be printed at actual size and cut in the middle',
    query: z.object({ sheet: z.enum(['a4', 'letter']).default('a4').describe('A4 for two A5 cards, Letter for two halves') }),
    answer: BYTES,
  },
} as const satisfies Record<string, Endpoint>;
