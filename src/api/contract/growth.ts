import { z } from 'zod';
import { Ladder } from '../../domain/growth/rung.ts';
import { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import { Reading } from '../../domain/measuring/reading.ts';
import { Instar } from '../../domain/molting/instar.ts';
import { Photo } from '../../domain/photo/photo.ts';
import { Specimen } from '../../domain/specimen/specimen.ts';
import type { Endpoint } from './endpoint.ts';

/** What the gallery needs to bring one skin to the common scale. */
export const GalleryItem = z
  .object({ moltId: z.string(), photo: Photo, calibration: CalibrationRecord, reading: Reading.nullable() })
  .meta({ id: 'GalleryItem' });
export type GalleryItem = z.infer<typeof GalleryItem>;

export const LadderPage = z
  .object({
    specimen: Specimen,
    instarNow: Instar.nullable().describe('Instar of the living animal: one more than the last shed'),
    ladder: Ladder,
    gallery: z.array(GalleryItem),
  })
  .meta({ id: 'LadderPage' });
export type LadderPage = z.infer<typeof LadderPage>;

export const growthEndpoints = {
  'GET /api/specimens/{specimenId}/ladder': { summary: 'The skins of one animal, instar by instar', answer: LadderPage },
} as const satisfies Record<string, Endpoint>;
