import { z } from 'zod';
import { PassAgreement } from '../../domain/agreement/passes.ts';
import { ObserverScatter } from '../../domain/agreement/pointing.ts';
import { SkinSizes } from '../../domain/growth/skinSizes.ts';
import { CalibrationRecord, ScaleMarks } from '../../domain/measuring/calibration.ts';
import { Reading, ReadingDraft } from '../../domain/measuring/reading.ts';
import { Instar } from '../../domain/molting/instar.ts';
import { Photo } from '../../domain/photo/photo.ts';
import { Removal } from '../../domain/removal.ts';
import type { Endpoint } from './endpoint.ts';

/** Everything the Bench needs for one photo. */
export const BenchSheet = z
  .object({
    photo: Photo,
    calibration: CalibrationRecord,
    readings: z.array(Reading).describe('By pass'),
    repeatsElsewhere: z.array(ObserverScatter).describe('How repeated clicks scatter on all other photos'),
    specimen: z
      .object({ id: z.string(), code: z.string(), taxon: z.string(), name: z.string().nullable(), sample: z.boolean() })
      .nullable(),
    instar: Instar.nullable().describe('That ended with the molt, where the photo shows a skin'),
  })
  .meta({ id: 'BenchSheet' });
export type BenchSheet = z.infer<typeof BenchSheet>;

/** A photo as the Bench offers it for measuring. */
export const BenchCandidate = BenchSheet.omit({ calibration: true, readings: true, repeatsElsewhere: true })
  .extend({ measured: z.boolean().describe('It has a scale and a reading') })
  .meta({ id: 'BenchCandidate' });
export type BenchCandidate = z.infer<typeof BenchCandidate>;

export const benchEndpoints = {
  'GET /api/bench': {
    summary: 'All photos with whose they are and whether they are measured, newest import first',
    answer: z.array(BenchCandidate),
  },
  'GET /api/photos/{photoId}/bench': { summary: 'A photo with its calibration and readings', answer: BenchSheet },
  'GET /api/exuviae/{exuviaId}/sizes': { summary: 'The sizes of one skin, from all its photos and passes', answer: SkinSizes },
  'GET /api/agreement': {
    summary: 'How well repeated passes over the same photos agree, within an observer and between two',
    answer: PassAgreement,
  },
  'PUT /api/photos/{photoId}/calibration': {
    summary: 'Save the marks on the scale object, and on a second one that checks it (version 0 before the first)',
    body: z.object({ marks: ScaleMarks.nullable(), check: ScaleMarks.optional() }),
    answer: CalibrationRecord,
    versioned: true,
  },
  'POST /api/photos/{photoId}/readings': { summary: 'Begin a reading', body: ReadingDraft, answer: Reading, status: 201 },
  'PUT /api/readings/{readingId}': { summary: 'Save a settled change of a reading', body: ReadingDraft, answer: Reading, versioned: true },
  'DELETE /api/readings/{readingId}': { summary: 'Remove a reading', answer: Removal },
} as const satisfies Record<string, Endpoint>;
