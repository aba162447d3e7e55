import { z } from 'zod';
import { TaskSnapshot } from '../../domain/intake/task.ts';
import { SheetScale, SheetSize } from '../../domain/plate/sheet.ts';
import { BYTES, type Endpoint } from './endpoint.ts';

const Sheet = z.object({ sheet: SheetSize.default('a4'), scale: SheetScale.default('fitted') });

export const galleryEndpoints = {
  'GET /api/photos/{photoId}/cuts/{cutKey}': {
    summary: 'The skin of a photo laid flat by its scale object, head up; only the cut that the present marks give',
    answer: BYTES,
  },
  'POST /api/specimens/{specimenId}/cuts': {
    summary: "Prepare the cuts of an animal's skins, as a task",
    answer: TaskSnapshot,
    status: 202,
  },
  'GET /api/specimens/{specimenId}/contact-sheet.pdf': { summary: 'All skins at one scale, as a PDF', query: Sheet, answer: BYTES },
  'GET /api/specimens/{specimenId}/contact-sheet.png': {
    summary: 'The same as a picture; several pages stand below each other',
    query: Sheet,
    answer: BYTES,
  },
  'GET /api/specimens/{specimenId}/flip-book.webp': {
    summary: 'The skins one after the other at one scale, as an animated WebP',
    query: z.object({ frameMs: z.coerce.number().int().min(100).max(10_000).default(1_200) }),
    answer: BYTES,
  },
} as const satisfies Record<string, Endpoint>;
