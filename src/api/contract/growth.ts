import { z } from 'zod';
import { GrowthReport } from '../../domain/growth/growthReport.ts';
import { Gap, GapOnRecord } from '../../domain/growth/missed/gap.ts';
import { Ladder } from '../../domain/growth/rung.ts';
import { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import { Reading } from '../../domain/measuring/reading.ts';
import { Instar } from '../../domain/molting/instar.ts';
import { Renumbering } from '../../domain/molting/renumbering.ts';
import { Photo } from '../../domain/photo/photo.ts';
import { Specimen } from '../../domain/specimen/specimen.ts';
import type { Endpoint } from './endpoint.ts';

/** What the gallery needs to bring one skin to the common scale. */
export const GalleryItem = z
  .object({
    moltId: z.string(),
    photo: Photo,
    calibration: CalibrationRecord,
    reading: Reading.nullable(),
    cutKey: z.string().describe('Names the cut that these marks give'),
    cutReady: z.boolean().describe('Whether it is kept already'),
  })
  .meta({ id: 'GalleryItem' });
export type GalleryItem = z.infer<typeof GalleryItem>;

export const LadderPage = z
  .object({
    specimen: Specimen,
    instarNow: Instar.nullable().describe('Instar of the living animal: one more than the last shed'),
    ladder: Ladder,
    growth: GrowthReport,
    gallery: z.array(GalleryItem),
  })
  .meta({ id: 'LadderPage' });
export type LadderPage = z.infer<typeof LadderPage>;

export const growthEndpoints = {
  'GET /api/specimens/{specimenId}/ladder': { summary: 'The skins of one animal, instar by instar', answer: LadderPage },
  'POST /api/specimens/{specimenId}/gaps': {
    summary: 'Put a molt that nobody saw on record: by numbering, or where no molt has a number as a presumed molt',
    body: Gap,
    answer: GapOnRecord,
    status: 201,
  },
  'POST /api/specimens/{specimenId}/closed-gaps': {
    summary: 'Take the gap in the numbers before a molt out: all later numbers fall',
    body: z.object({ beforeMoltId: z.string() }),
    answer: Renumbering,
    status: 201,
  },
  'POST /api/specimens/{specimenId}/renumberings': {
    summary: 'Change the instar numbers of several molts at once, all or none',
    body: Renumbering,
    answer: Renumbering,
    status: 201,
  },
} as const satisfies Record<string, Endpoint>;
