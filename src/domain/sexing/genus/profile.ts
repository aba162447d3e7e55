import { z } from 'zod';
import { Instant } from '../../dates.ts';

/** Forms of the female's receptacles. */
export const ReceptacleForm = z
  .enum([
    'paired-separate',
    'sessile',
    'paired-joined-base',
    'single-undivided',
    'single-notched',
    'multi-lobed',
    'spiral',
    'with-lateral-chamber',
    'capitate',
    'acapitate',
    'weakly-sclerotized',
    'absent',
    'anomalous-conjoined',
    'juvenile-undetermined',
  ])
  .meta({ id: 'ReceptacleForm' });
export type ReceptacleForm = z.infer<typeof ReceptacleForm>;

/** What one cell of a profile rests on. `memory` has no published source and must be shown as such. */
export const CellBasis = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('source'), text: z.string().trim().min(1).max(500), weak: z.boolean().default(false) }),
    z.object({ kind: z.literal('memory'), weak: z.boolean().default(false) }),
    z.object({ kind: z.literal('judgement') }),
    z.object({ kind: z.literal('keeper'), note: z.string().trim().max(500) }),
  ])
  .meta({ id: 'CellBasis' });
export type CellBasis = z.infer<typeof CellBasis>;

export const HooksState = z.enum(['present', 'absent', 'varies', 'not-checked']).meta({ id: 'HooksState' });
export type HooksState = z.infer<typeof HooksState>;

/** Whether hooks that were seen speak for a male: not where males of the genus are not known to carry them. */
export function hooksSpeak(state: HooksState): boolean {
  return state === 'present' || state === 'varies';
}

/** What makes the genital strip of a genus misleading. */
export const GenusFlags = z
  .object({
    withoutSpermathecae: z.boolean().describe('Females have no receptacles: their absence says nothing'),
    maleAccessoryOrgans: z.boolean().describe('Males carry paired bodies that look like receptacles: only the uterus externus tells'),
    weaklySclerotized: z.boolean().describe('Receptacles so thin that they are easily overlooked'),
    formChangesWithAge: z.boolean().describe('A young female shows another form than an adult one'),
  })
  .meta({ id: 'GenusFlags' });
export type GenusFlags = z.infer<typeof GenusFlags>;

export const PLAIN_FLAGS: GenusFlags = {
  withoutSpermathecae: false,
  maleAccessoryOrgans: false,
  weaklySclerotized: false,
  formChangesWithAge: false,
};

const Words = z.string().trim().max(1_000);

/** What is known of one genus, cell by cell, each with what it rests on. */
export const GenusProfileDraft = z
  .object({
    receptacles: z.object({ forms: z.array(ReceptacleForm).max(14), words: Words, basis: CellBasis }),
    hooks: z.object({ state: HooksState, words: Words, basis: CellBasis }),
    pitfalls: z.array(z.object({ words: Words.min(1), basis: CellBasis })).max(10),
    flags: GenusFlags,
    flagsBasis: CellBasis,
    adultCarapaceMm: z.number().positive().max(100).nullable().default(null).describe('Usual, of an adult female; null where not known'),
    earlyColorBasis: CellBasis.nullable().default(null).describe('Where the sexes are colored differently early on: what says so'),
  })
  .meta({ id: 'GenusProfileDraft' });
export type GenusProfileDraft = z.infer<typeof GenusProfileDraft>;

export const ShippedProfile = GenusProfileDraft.extend({
  genus: z.string().regex(/^[A-Z][a-z]+$/),
  alsoNamed: z
    .array(z.string().regex(/^[A-Z][a-z]+$/))
    .default([])
    .describe('Names under which its species were kept before'),
}).meta({ id: 'ShippedProfile' });
export type ShippedProfile = z.infer<typeof ShippedProfile>;

/** `resources/genera/profiles.json`. */
export const ShippedProfiles = z.object({ format: z.literal('exuviary-genera/1'), about: z.string(), profiles: z.array(ShippedProfile) });

/** A keeper's version of a profile, whole, with the reason. Kept for good; the last one counts. */
export const ProfileEditDraft = z
  .object({
    profile: GenusProfileDraft.nullable().describe('Null goes back to the shipped profile'),
    note: z.string().trim().min(1).max(2_000),
    by: z.string().trim().min(1).max(200),
  })
  .meta({ id: 'ProfileEditDraft' });
export type ProfileEditDraft = z.infer<typeof ProfileEditDraft>;

export const ProfileEdit = ProfileEditDraft.extend({
  genus: z.string(),
  version: z.int().min(1).describe('1 for the first edit of this genus'),
  at: Instant,
}).meta({ id: 'ProfileEdit' });
export type ProfileEdit = z.infer<typeof ProfileEdit>;

export const GenusProfile = GenusProfileDraft.extend({
  genus: z.string().describe('As the animal’s name gives it; the present name where it was moved'),
  known: z.boolean().describe('False for a genus without a profile: everything reads as plain and not checked'),
  version: z.int().min(0).describe('Of the keeper’s edits; 0 as shipped'),
}).meta({ id: 'GenusProfile' });
export type GenusProfile = z.infer<typeof GenusProfile>;
