import { z } from 'zod';
import { MoltWatched } from '../../domain/care/lastMolt.ts';
import { LifeEvent } from '../../domain/care/lifeLine.ts';
import { MaleMaturitySign } from '../../domain/care/matureMale.ts';
import { Observation } from '../../domain/care/observation.ts';
import { CalendarDay } from '../../domain/dates.ts';
import { DueForecast } from '../../domain/growth/forecast/dueForecast.ts';
import { GrowthForecast } from '../../domain/growth/forecast/forecast.ts';
import { SkinSizes } from '../../domain/growth/skinSizes.ts';
import { Estimate } from '../../domain/measuring/quantity.ts';
import { Exuvia, ExuviaDraft } from '../../domain/molting/exuvia.ts';
import { Instar } from '../../domain/molting/instar.ts';
import { Molt, MoltDraft } from '../../domain/molting/molt.ts';
import { Photo } from '../../domain/photo/photo.ts';
import { Removal } from '../../domain/removal.ts';
import { Determination, SexSign } from '../../domain/sexing/determination.ts';
import { LiveSign } from '../../domain/sexing/live/liveSign.ts';
import { Specimen, SpecimenDraft } from '../../domain/specimen/specimen.ts';
import type { Endpoint } from './endpoint.ts';

/** The latest skin with a carapace length: of an instar that has ended, and not always the last one. */
export const LastMeasuredSkin = z
  .object({
    carapaceLengthMm: Estimate.describe('From all photos and passes of the skin'),
    instar: Instar.nullable(),
    recordedMolt: z.int().min(1).describe('1 for the first molt on record'),
    isOfLastMolt: z.boolean().describe('false where later molts left no measured skin'),
  })
  .meta({ id: 'LastMeasuredSkin' });
export type LastMeasuredSkin = z.infer<typeof LastMeasuredSkin>;

/** A specimen as the Cabinet lists it. */
export const SpecimenSummary = z
  .object({
    specimen: Specimen,
    sex: SexSign,
    instarNow: Instar.nullable().describe(
      'Instar of the living animal: one more than the last shed, a watched molt that has ended counted in',
    ),
    recordedMolts: z.int(),
    lastMolt: z
      .object({ from: CalendarDay, to: CalendarDay })
      .nullable()
      .describe('On record; one that is only watched stands in moltWatched'),
    lastMeasuredSkin: LastMeasuredSkin.nullable(),
    coverPhotoId: z.string().nullable(),
    nextMolt: DueForecast.nullable().describe('Null where no molt is awaited or there is no day to count from'),
    matureMaleBy: MaleMaturitySign.nullable().describe('What tells that he is grown and molts no more; then nothing is foretold'),
    maleContradicted: z
      .boolean()
      .describe('Palpal bulbs are on record and something else says that it is no male; then nothing is foretold either'),
    moltWatched: MoltWatched.nullable().describe('A molt under way or not on record yet; then nothing is foretold either'),
  })
  .meta({ id: 'SpecimenSummary' });
export type SpecimenSummary = z.infer<typeof SpecimenSummary>;

/** One molt with all that hangs on it. */
export const MoltEntry = z
  .object({
    molt: Molt,
    exuvia: Exuvia.nullable(),
    photos: z.array(Photo),
    instar: Instar.nullable().describe('That ended with the molt, so the one the skin shows'),
    sizes: SkinSizes.describe('Of the skin, from all its photos and passes'),
    determinations: z.array(Determination),
  })
  .meta({ id: 'MoltEntry' });
export type MoltEntry = z.infer<typeof MoltEntry>;

/** A specimen's own page. */
export const SpecimenPage = z
  .object({
    summary: SpecimenSummary,
    molts: z.array(MoltEntry).describe('Oldest first'),
    animalPhotos: z.array(Photo).describe('Of the living animal, oldest first'),
    observations: z.array(Observation).describe('Of the living animal, oldest first'),
    liveSigns: z.array(LiveSign).describe('Signed of the animal itself, oldest first; withdrawn ones too'),
    forecast: GrowthForecast.nullable().describe(
      'Of the next molt and size; null where no molt is awaited: no longer kept, a mature male, or a molt that was watched and is not on record',
    ),
    lifeLine: z.array(LifeEvent).describe('Everything on record on one line, oldest first'),
  })
  .meta({ id: 'SpecimenPage' });
export type SpecimenPage = z.infer<typeof SpecimenPage>;

export const specimenEndpoints = {
  'GET /api/specimens': { summary: 'All specimens, by code', answer: z.array(SpecimenSummary) },
  'POST /api/specimens': { summary: 'Add a specimen', body: SpecimenDraft, answer: Specimen, status: 201 },
  'GET /api/specimens/{specimenId}': { summary: "A specimen's own page", answer: SpecimenPage },
  'PUT /api/specimens/{specimenId}': { summary: 'Change a specimen', body: SpecimenDraft, answer: Specimen, versioned: true },
  'DELETE /api/specimens/{specimenId}': {
    summary: 'Remove a specimen with its molts, skins and determinations; photos stay with their readings, unassigned',
    answer: Removal,
  },
  'POST /api/specimens/{specimenId}/molts': { summary: 'Add a molt', body: MoltDraft, answer: Molt, status: 201 },
  'PUT /api/molts/{moltId}': { summary: 'Change a molt', body: MoltDraft, answer: Molt, versioned: true },
  'DELETE /api/molts/{moltId}': { summary: 'Remove a molt with its skin and determinations; photos stay, unassigned', answer: Removal },
  'POST /api/molts/{moltId}/exuvia': { summary: 'Record the skin of a molt', body: ExuviaDraft, answer: Exuvia, status: 201 },
  'PUT /api/exuviae/{exuviaId}': { summary: 'Change what is known of a skin', body: ExuviaDraft, answer: Exuvia, versioned: true },
  'DELETE /api/exuviae/{exuviaId}': { summary: 'Remove a skin with its determinations; photos stay, unassigned', answer: Removal },
} as const satisfies Record<string, Endpoint>;
