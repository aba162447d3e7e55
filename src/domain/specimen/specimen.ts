import { z } from 'zod';
import { CalendarDay, Instant } from '../dates.ts';

/** How the animal lives: decides nothing by itself, but premolt signs differ. */
export const Habit = z.enum(['terrestrial', 'arboreal', 'fossorial']).meta({ id: 'Habit' });
export type Habit = z.infer<typeof Habit>;

export const SpecimenStatus = z.enum(['living', 'dead', 'sold', 'on-loan']).meta({ id: 'SpecimenStatus' });
export type SpecimenStatus = z.infer<typeof SpecimenStatus>;

/** The name of a genus begins with a capital (ICZN, fourth edition, article 28). */
function withCapitalGenus(taxon: string): string {
  return taxon.charAt(0).toUpperCase() + taxon.slice(1);
}

/** What a keeper says about an animal. Its sex is not here: it follows from the determinations. */
export const SpecimenDraft = z
  .object({
    code: z.string().trim().min(1).max(40).describe("The keeper's own short code, unique in the archive"),
    taxon: z.string().trim().max(200).overwrite(withCapitalGenus).describe('Scientific name as used now; empty if unknown'),
    name: z.string().trim().max(200).nullable(),
    origin: z.string().trim().max(500).nullable(),
    eggSacGroup: z.string().trim().max(100).nullable().describe('Siblings of one egg sac share this label'),
    acquiredOn: CalendarDay.nullable(),
    acquiredInstar: z.int().min(1).max(60).nullable(),
    hatchedOn: CalendarDay.nullable(),
    habit: Habit.nullable(),
    status: SpecimenStatus,
    notes: z.string().max(20_000),
  })
  .meta({ id: 'SpecimenDraft' });
export type SpecimenDraft = z.infer<typeof SpecimenDraft>;

export const Specimen = SpecimenDraft.extend({
  id: z.string(),
  version: z.int().describe('Rises by one at each change; sent back as If-Match'),
  sample: z.boolean().describe('Belongs to the invented sample cabinet'),
  createdAt: Instant,
}).meta({ id: 'Specimen' });
export type Specimen = z.infer<typeof Specimen>;
