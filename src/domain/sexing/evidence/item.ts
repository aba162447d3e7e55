import { z } from 'zod';
import { type NumberId, NumberIdSchema } from './numbers.ts';

/** The findings the model knows. */
export const FindingKind = z
  .enum([
    'receptacles-seen',
    'strip-empty',
    'lip-alone',
    'accessory-organs',
    'fusillae-outside',
    'bulbs-on-skin',
    'palpal-bulbs',
    'no-bulbs',
    'tibial-hooks',
    'no-hooks',
    'egg-sac',
    'sperm-web',
    'ventral-fusillae',
    'no-ventral-fusillae',
    'impression-ventral',
    'impression-color',
    'impression-build',
    'impression-seller',
  ])
  .meta({ id: 'FindingKind' });
export type FindingKind = z.infer<typeof FindingKind>;

/** Why a finding weighs nothing. */
export const Silence = z
  .enum([
    'skin-of-another-animal',
    'strip-not-readable',
    'place-not-found',
    'read-from-outside',
    'read-from-inside',
    'organs-without-lip',
    'same-look-from-below',
    'genus-without-spermathecae',
    'as-likely-mistaken',
    'grade-below-a',
    'skin-too-small',
    'bulbs-not-expected-on-skin',
    'no-hooks-says-nothing',
    'genus-hooks-not-known',
    'animal-not-adult-size',
    'color-without-source',
  ])
  .meta({ id: 'Silence' });
export type Silence = z.infer<typeof Silence>;

export const Weight = z.enum(['none', 'slight', 'fair', 'heavy', 'decisive']).meta({ id: 'EvidenceWeight' });
export type Weight = z.infer<typeof Weight>;

/** One thing that was found, and what it speaks for. */
export const EvidenceItem = z
  .object({
    kind: FindingKind,
    towards: z.enum(['female', 'male']).nullable().describe('Null when it weighs nothing'),
    weight: Weight,
    silence: Silence.nullable(),
    numbers: z.array(NumberIdSchema).describe('Of the model, that its weight rests on'),
    exuviaId: z.string().nullable().describe('The skin it was read on; null for the animal itself'),
    weakened: z.boolean().describe('Counts less because another skin of the animal that agrees, read by the same eyes, weighs more'),
    gaveWay: z.boolean().describe('Of a reading that does not count, since a better one of the same skin speaks; it can still contradict'),
  })
  .meta({ id: 'EvidenceItem' });
export type EvidenceItem = z.infer<typeof EvidenceItem>;

/** A finding with its likelihood ratio for female: above 1 female, below 1 male. */
export interface Finding {
  readonly kind: FindingKind;
  readonly ratio: number;
  readonly numbers: readonly NumberId[];
  readonly silence: Silence | null;
  readonly exuviaId: string | null;
}

export function silent(kind: FindingKind, silence: Silence, exuviaId: string | null): Finding {
  return { kind, ratio: 1, numbers: [], silence, exuviaId };
}

/** How strong a ratio is, whichever way it speaks. */
export function strengthOf(ratio: number): number {
  return Math.max(ratio, 1 / ratio);
}

export function sexFor(ratio: number): 'female' | 'male' | null {
  if (ratio > 1) return 'female';
  return ratio < 1 ? 'male' : null;
}

/** Words for sizes of evidence; only for showing, nothing is decided by them. */
export function weightOf(ratio: number): Weight {
  const strength = strengthOf(ratio);
  if (strength < 1.05) return 'none';
  if (strength < 3) return 'slight';
  if (strength < 10) return 'fair';
  return strength < 100 ? 'heavy' : 'decisive';
}
