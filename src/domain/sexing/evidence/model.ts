import { z } from 'zod';
import { Instant } from '../../dates.ts';
import { fail, type Result, succeed } from '../../result.ts';
import { Adjustments, type ModelNumbers, NUMBER_IDS, NumberIdSchema, numbersWith, SHIPPED_NUMBERS } from './numbers.ts';

/**
 * Of the rules in this folder; raised when one of them changes. The first form of the Examination, without a model, counts as 0.
 * Form 1 let any finding open a gate, weakened a skin beside one that contradicts it, and came to know only later of conflicts
 * between readings of one skin, so that this one form stands for two rules. Form 2 let the later of two equally well placed
 * readings of one skin override the other. Form 3 let receptacles weigh in full beside a lip that was looked for and is absent.
 * Form 4 let two skins with look-alikes establish a female, opinions alone make a probable animal, and a skin of another animal
 * or read at another place be signed as a leaning.
 */
export const MODEL_FORM = 5;

/** Whether the rules have changed since a version such as `1.3`; null for what was signed without a model. */
export function isEarlierForm(version: string): boolean | null {
  const form = Number(version.split('.')[0]);
  return form === 0 ? null : form < MODEL_FORM;
}

export const ModelChangeDraft = z
  .object({
    adjustments: Adjustments.describe('All numbers that differ from the shipped ones; an empty record goes back to those'),
    by: z.string().trim().min(1).max(200),
    note: z.string().trim().min(1).max(2_000).describe('Why'),
  })
  .meta({ id: 'ModelChangeDraft' });
export type ModelChangeDraft = z.infer<typeof ModelChangeDraft>;

/** One change of the model's numbers; kept for good, since determinations name the revision they were made with. */
export const ModelChange = ModelChangeDraft.extend({ revision: z.int().min(1), at: Instant }).meta({ id: 'ModelChange' });
export type ModelChange = z.infer<typeof ModelChange>;

/** The numbers in force. */
export interface EvidenceModel {
  /** `5.0` as shipped, `5.3` after the third change. */
  readonly version: string;
  readonly numbers: ModelNumbers;
}

export function modelAfter(changes: readonly ModelChange[]): EvidenceModel {
  const last = changes.at(-1);
  return { version: `${MODEL_FORM}.${last?.revision ?? 0}`, numbers: numbersWith(last?.adjustments ?? {}) };
}

/** One number as it is shown: what it is, what it was shipped as, and where it comes from. */
export const ShownNumber = z
  .object({
    id: NumberIdSchema,
    value: z.number(),
    shipped: z.number(),
    lowest: z.number(),
    highest: z.number(),
    basis: z.union([z.literal('judgement'), z.literal('keeper'), z.object({ source: z.string() })]),
  })
  .meta({ id: 'ShownNumber' });
export type ShownNumber = z.infer<typeof ShownNumber>;

export function shownNumbers({ numbers }: EvidenceModel): ShownNumber[] {
  return NUMBER_IDS.map((id) => {
    const { value: shipped, lowest, highest, basis } = SHIPPED_NUMBERS[id];
    const value = numbers[id];
    return { id, value, shipped, lowest, highest, basis: value === shipped ? basis : 'keeper' };
  });
}

/** Numbers that only make sense in this order. */
const RISING = [
  ['span.fromB', 'span.fromC', 'span.aboveD'],
  ['carapace.fromB', 'carapace.fromC', 'carapace.aboveD'],
  ['relative.fromB', 'relative.fromC', 'relative.aboveD'],
  ['noBulbs.fromRelativeSize', 'noBulbs.fullAtRelativeSize'],
  ['noBulbs.least', 'noBulbs.most'],
  ['band.leaning', 'band.probable', 'band.strong', 'band.established'],
] as const;

/** Fails with `number-out-of-range`, which names the first number that is outside its limits or its order. */
export function checkModelChange(draft: ModelChangeDraft): Result<ModelChangeDraft> {
  for (const id of NUMBER_IDS) {
    const value = draft.adjustments[id];
    const { lowest, highest } = SHIPPED_NUMBERS[id];
    if (value !== undefined && !(value >= lowest && value <= highest))
      return fail({ code: 'number-out-of-range', number: id, lowest, highest });
  }
  const numbers = numbersWith(draft.adjustments);
  for (const ids of RISING) {
    for (const [index, id] of ids.entries()) {
      const before = ids[index - 1];
      if (before !== undefined && !(numbers[id] > numbers[before])) {
        return fail({ code: 'number-out-of-range', number: id, lowest: numbers[before], highest: SHIPPED_NUMBERS[id].highest });
      }
    }
  }
  return succeed(draft);
}
