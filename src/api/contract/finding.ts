import { z } from 'zod';
import { FoundScale, ScaleProposal } from '../../domain/finding/foundScale.ts';
import { RoughScale } from '../../domain/finding/refinement.ts';
import { Removal } from '../../domain/removal.ts';
import { PrintCheck, PrintCheckDraft } from '../../domain/scaleCard/printCheck.ts';
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
  'GET /api/print-checks': { summary: 'How true printers print the scale card, the latest first', answer: z.array(PrintCheck) },
  'POST /api/print-checks': {
    summary: 'Keep what a caliper read on the check bars of a printed scale card',
    body: PrintCheckDraft,
    answer: PrintCheck,
    status: 201,
  },
  'DELETE /api/print-checks/{printCheckId}': {
    summary: 'Remove a print check, to be put back until the archive is closed; calibrations that used it keep its figures',
    answer: Removal,
  },
} as const satisfies Record<string, Endpoint>;
