import { z } from 'zod';
import { Photo, PhotoDraft, RenditionKind } from '../../domain/photo/photo.ts';
import { Removal } from '../../domain/removal.ts';
import { BYTES, type Endpoint } from './endpoint.ts';

export const photoEndpoints = {
  'GET /api/photos': {
    summary: 'Photos, newest import first',
    query: z.object({ unassigned: z.stringbool().default(false).describe('Only those that belong to nothing yet') }),
    answer: z.array(Photo),
  },
  'GET /api/photos/{photoId}': { summary: 'One photo', answer: Photo },
  'PUT /api/photos/{photoId}': {
    summary: 'Say what a photo shows, from which side, and when',
    body: PhotoDraft,
    answer: Photo,
    versioned: true,
  },
  'DELETE /api/photos/{photoId}': { summary: 'Remove a photo with its calibration and readings', answer: Removal },
  'GET /api/photos/{photoId}/original': { summary: 'The bytes as they came in', answer: BYTES },
  'GET /api/photos/{photoId}/renditions/{kind}': { summary: `An upright copy: ${RenditionKind.options.join(', ')}`, answer: BYTES },
} as const satisfies Record<string, Endpoint>;
