import { z } from 'zod';
import { Estimate } from '../../domain/measuring/quantity.ts';
import { Exuvia } from '../../domain/molting/exuvia.ts';
import { Instar } from '../../domain/molting/instar.ts';
import { Molt } from '../../domain/molting/molt.ts';
import { Photo } from '../../domain/photo/photo.ts';
import { Determination, DeterminationDraft, SexSign } from '../../domain/sexing/determination.ts';
import { Specimen } from '../../domain/specimen/specimen.ts';
import type { Endpoint } from './endpoint.ts';

/** One skin on the examination table, with what the animal's other skins said. */
export const ExaminationSheet = z
  .object({
    specimen: Specimen,
    molt: Molt,
    exuvia: Exuvia,
    photos: z.array(Photo).describe('Of this skin'),
    instar: Instar.nullable().describe('That ended with the molt, so the one the skin shows'),
    legSpanMm: Estimate.nullable().describe('Of the skin, from all its photos and passes'),
    determinations: z.array(Determination).describe('Of all skins of the animal, oldest first'),
    sign: SexSign,
  })
  .meta({ id: 'ExaminationSheet' });
export type ExaminationSheet = z.infer<typeof ExaminationSheet>;

/** What is signed, and whether the grade read goes to the skin's own record with it. */
export const Signature = DeterminationDraft.extend({
  gradeForSkin: z
    .object({ version: z.int().describe('Of the skin whose record is changed') })
    .nullable()
    .describe("Writes the checklist's grade, where it has one, to the skin; null leaves the skin as it is"),
}).meta({ id: 'Signature' });
export type Signature = z.infer<typeof Signature>;

/** A skin as the Examination offers it for reading. */
export const SkinSummary = z
  .object({
    specimen: Specimen.pick({ id: true, code: true, taxon: true, name: true }),
    molt: Molt,
    instar: Instar.nullable().describe('That ended with the molt, so the one the skin shows'),
    recordedMolt: z.int().min(1).describe('1 for the first molt on record'),
    exuvia: Exuvia,
    coverPhotoId: z.string().nullable(),
    standingDeterminations: z.int().min(0).describe('Of this skin: neither withdrawn nor corrected'),
  })
  .meta({ id: 'SkinSummary' });
export type SkinSummary = z.infer<typeof SkinSummary>;

export const sexingEndpoints = {
  'GET /api/exuviae': { summary: 'Recovered skins of all animals, latest molt first', answer: z.array(SkinSummary) },
  'GET /api/exuviae/{exuviaId}/examination': {
    summary: 'One skin with its photos and all determinations of the animal',
    answer: ExaminationSheet,
  },
  'POST /api/exuviae/{exuviaId}/determinations': {
    summary: 'Sign a determination',
    body: Signature,
    answer: Determination,
    status: 201,
  },
  'POST /api/determinations/{determinationId}/withdrawal': {
    summary: 'Withdraw a determination; it stays on record with the reason',
    body: z.object({ reason: z.string().trim().min(1).max(2_000) }),
    answer: Determination,
  },
} as const satisfies Record<string, Endpoint>;
