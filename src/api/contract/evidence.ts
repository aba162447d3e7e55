import { z } from 'zod';
import { ModelChange, ModelChangeDraft, ShownNumber } from '../../domain/sexing/evidence/model.ts';
import { GenusProfile, ProfileEdit, ProfileEditDraft, ShippedProfile } from '../../domain/sexing/genus/profile.ts';
import { LiveSign, LiveSignDraft } from '../../domain/sexing/live/liveSign.ts';
import type { Endpoint } from './endpoint.ts';
import { Withdrawal } from './sexing.ts';

/** One genus with what it was shipped as and what the keeper made of it. */
export const GenusPage = z
  .object({ profile: GenusProfile, shipped: ShippedProfile.nullable(), edits: z.array(ProfileEdit).describe('Oldest first') })
  .meta({ id: 'GenusPage' });
export type GenusPage = z.infer<typeof GenusPage>;

/** The numbers of the evidence model, each with its standing, and every change of them. */
export const ModelPage = z
  .object({
    version: z.string(),
    revision: z.int().min(0).describe('Of the last change; 0 as shipped'),
    numbers: z.array(ShownNumber),
    changes: z.array(ModelChange).describe('Oldest first'),
  })
  .meta({ id: 'ModelPage' });
export type ModelPage = z.infer<typeof ModelPage>;

export const evidenceEndpoints = {
  'GET /api/specimens/{specimenId}/live-signs': {
    summary: 'What was recorded of the animal itself, oldest first',
    answer: z.array(LiveSign),
  },
  'POST /api/specimens/{specimenId}/live-signs': {
    summary: 'Record what the animal itself shows: bulbs with its ultimate molt, hooks, a sperm web, an egg sac, a look from below',
    body: LiveSignDraft,
    answer: LiveSign,
    status: 201,
  },
  'POST /api/live-signs/{liveSignId}/withdrawal': {
    summary: 'Withdraw a sign of the animal; it stays on record with the reason',
    body: Withdrawal,
    answer: LiveSign,
  },
  'GET /api/genera': { summary: 'Profiles of genera, by name', answer: z.array(GenusProfile) },
  'GET /api/genera/{genus}': { summary: 'One genus with all edits of its profile', answer: GenusPage },
  'PUT /api/genera/{genus}': {
    summary: 'Edit the profile of a genus, with a note; changes no stored answer',
    body: ProfileEditDraft,
    answer: GenusPage,
    versioned: true,
  },
  'GET /api/evidence-model': { summary: 'The numbers of the evidence model', answer: ModelPage },
  'PUT /api/evidence-model': {
    summary: 'Change numbers of the evidence model, with a note; earlier determinations keep the version they were made with',
    body: ModelChangeDraft,
    answer: ModelPage,
    versioned: true,
  },
} as const satisfies Record<string, Endpoint>;
