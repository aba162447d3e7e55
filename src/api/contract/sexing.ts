import { z } from 'zod';
import { Estimate } from '../../domain/measuring/quantity.ts';
import { Exuvia } from '../../domain/molting/exuvia.ts';
import { Instar } from '../../domain/molting/instar.ts';
import { Molt } from '../../domain/molting/molt.ts';
import { Photo } from '../../domain/photo/photo.ts';
import { AbdomenDistance } from '../../domain/sexing/abdomenDistances.ts';
import {
  Determination,
  DeterminationDraft,
  ExaminationUnderWay,
  SexSign,
  UnfinishedDetermination,
} from '../../domain/sexing/determination.ts';
import { Gate } from '../../domain/sexing/evidence/gates.ts';
import { EvidenceItem } from '../../domain/sexing/evidence/item.ts';
import { Adjustments } from '../../domain/sexing/evidence/numbers.ts';
import { Prospect } from '../../domain/sexing/evidence/prospects.ts';
import { SizeClass } from '../../domain/sexing/evidence/sizeClass.ts';
import { Band } from '../../domain/sexing/evidence/weigh.ts';
import { GenusProfile } from '../../domain/sexing/genus/profile.ts';
import { LaterFate } from '../../domain/sexing/later.ts';
import { LiveSign } from '../../domain/sexing/live/liveSign.ts';
import { Specimen } from '../../domain/specimen/specimen.ts';
import type { Endpoint } from './endpoint.ts';

/** What evidence comes to. A band and what carries it; never a decimal, because nobody knows one. */
export const EvidenceView = z
  .object({
    towards: z.enum(['female', 'male']).nullable(),
    band: Band,
    conflict: z.boolean().describe('Two heavy findings or skins contradict each other: nothing is averaged, the next molt decides'),
    gate: Gate.nullable().describe('The rule that held the band down'),
    items: z.array(EvidenceItem),
    prospects: z.array(Prospect).describe('What would change it'),
  })
  .meta({ id: 'EvidenceView' });
export type EvidenceView = z.infer<typeof EvidenceView>;

/** The evidence model in force, as far as the page needs it to weigh a reading while it is made. */
export const ModelInForce = z.object({ version: z.string(), adjustments: Adjustments }).meta({ id: 'ModelInForce' });
export type ModelInForce = z.infer<typeof ModelInForce>;

/** A skin of the same genus whose animal's sex is established. */
export const ReferenceSkin = z
  .object({
    exuviaId: z.string(),
    specimen: Specimen.pick({ id: true, code: true, taxon: true, name: true }),
    instar: Instar.nullable(),
    sex: z.enum(['female', 'male']),
    sizeClass: SizeClass.nullable(),
    coverPhotoId: z.string().nullable(),
  })
  .meta({ id: 'ReferenceSkin' });
export type ReferenceSkin = z.infer<typeof ReferenceSkin>;

/** One skin on the examination table, with what the animal's other skins said. */
export const ExaminationSheet = z
  .object({
    specimen: Specimen,
    molt: Molt,
    exuvia: Exuvia,
    photos: z.array(Photo).describe('Of this skin'),
    instar: Instar.nullable().describe('That ended with the molt, so the one the skin shows'),
    legSpanMm: Estimate.nullable().describe('Of the skin, from all its photos and passes'),
    carapaceLengthMm: Estimate.nullable().describe('Of the skin, from all its photos and passes'),
    distances: z.array(AbdomenDistance).describe('Measured on the opened abdomen of the skin'),
    determinations: z.array(Determination).describe('Of all skins of the animal, oldest first'),
    fates: z.array(LaterFate).describe('Of the determinations, in the same order'),
    liveSigns: z.array(LiveSign).describe('Of the animal itself, oldest first'),
    sign: SexSign,
    genus: GenusProfile,
    model: ModelInForce,
    evidence: EvidenceView.describe('Of the whole history, without the reading under way'),
    underWay: ExaminationUnderWay,
    references: z.array(ReferenceSkin),
  })
  .meta({ id: 'ExaminationSheet' });
export type ExaminationSheet = z.infer<typeof ExaminationSheet>;

/** What is signed, the reading it comes from, and whether the grade read goes to the skin's own record with it. */
export const Signature = DeterminationDraft.extend({
  readingVersion: z.int().min(0).describe('Of the reading under way that is signed and ended; 0 where none was ever stored'),
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
    begun: z.boolean().describe('A reading of it is under way'),
  })
  .meta({ id: 'SkinSummary' });
export type SkinSummary = z.infer<typeof SkinSummary>;

export const Withdrawal = z.object({ reason: z.string().trim().min(1).max(2_000) });

export const sexingEndpoints = {
  'GET /api/exuviae': { summary: 'Recovered skins of all animals, latest molt first', answer: z.array(SkinSummary) },
  'GET /api/exuviae/{exuviaId}/examination': {
    summary: 'One skin with its photos, all determinations of the animal, and the reading under way',
    answer: ExaminationSheet,
  },
  'PUT /api/exuviae/{exuviaId}/examination': {
    summary: 'Keep the reading under way, to be resumed (version 0 before the first); null gives it up',
    body: z.object({ reading: UnfinishedDetermination.nullable() }),
    answer: ExaminationUnderWay,
    versioned: true,
  },
  'POST /api/exuviae/{exuviaId}/determinations': {
    summary: 'Sign a determination; ends the reading under way',
    body: Signature,
    answer: Determination,
    status: 201,
  },
  'POST /api/determinations/{determinationId}/withdrawal': {
    summary: 'Withdraw a determination; it stays on record with the reason',
    body: Withdrawal,
    answer: Determination,
  },
} as const satisfies Record<string, Endpoint>;
