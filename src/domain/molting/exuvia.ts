import { z } from 'zod';
import { Instant } from '../dates.ts';

/** Readability of the genital strip: A flat and complete; B folded or cloudy; C torn or one light only; D missing or eaten. */
export const SkinGrade = z.enum(['A', 'B', 'C', 'D']).meta({ id: 'SkinGrade' });
export type SkinGrade = z.infer<typeof SkinGrade>;

export const SkinCompleteness = z
  .enum(['complete', 'abdomen-missing', 'legs-missing', 'carapace-only', 'fragments'])
  .meta({ id: 'SkinCompleteness' });
export type SkinCompleteness = z.infer<typeof SkinCompleteness>;

/** Whether a length of the protocol can be had from what is left: a carapace is enough. One of which nobody said is taken to be whole. */
export function canBeMeasured({ completeness }: Pick<Exuvia, 'completeness'>): boolean {
  return completeness !== 'fragments';
}

/** Whether there is a genital strip to examine: its grade says so, else what is left of the skin. */
export function hasStrip({ grade, completeness }: Pick<Exuvia, 'grade' | 'completeness'>): boolean {
  return grade === null ? completeness !== 'abdomen-missing' && completeness !== 'carapace-only' : grade !== 'D';
}

/** The skin left by one molt. It shows the instar that ended, never the living animal. */
export const ExuviaDraft = z
  .object({
    recovered: z.boolean(),
    grade: SkinGrade.nullable(),
    completeness: SkinCompleteness.nullable(),
    storagePlace: z.string().trim().max(200).nullable(),
    notes: z.string().max(20_000),
  })
  .meta({ id: 'ExuviaDraft' });
export type ExuviaDraft = z.infer<typeof ExuviaDraft>;

export const Exuvia = ExuviaDraft.extend({
  id: z.string(),
  moltId: z.string(),
  version: z.int(),
  createdAt: Instant,
}).meta({ id: 'Exuvia' });
export type Exuvia = z.infer<typeof Exuvia>;
