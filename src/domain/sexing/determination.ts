import { z } from 'zod';
import { CalendarDay, Instant } from '../dates.ts';
import { SkinGrade } from '../molting/exuvia.ts';

/** "Not seen" is three different answers: only `yes` and `no` weigh (`no` = readable and absent). */
export const Answer = z.enum(['yes', 'no', 'cannot-tell', 'not-looked']).meta({ id: 'Answer' });
export type Answer = z.infer<typeof Answer>;

export const Sex = z.enum(['female', 'male', 'unsexed']).meta({ id: 'Sex' });
export type Sex = z.infer<typeof Sex>;

export const Level = z.enum(['leaning', 'probable', 'strong', 'established']).meta({ id: 'Level' });
export type Level = z.infer<typeof Level>;

/** The checklist for one skin. */
export const Checklist = z
  .object({
    skinMatchesAnimal: Answer,
    grade: SkinGrade.nullable(),
    fourBookLungsFound: Answer,
    view: z.enum(['inside', 'outside', 'both']).nullable(),
    condition: z.enum(['wet', 'dry', 'both']).nullable(),
    light: z.enum(['transmitted', 'side', 'both']).nullable(),
    magnification: z.enum(['naked-eye', 'loupe', 'stereomicroscope']).nullable(),
    receptaclesSeen: Answer.describe('Flap or receptacles in front of the furrow; `no` = area readable and absent'),
    uterusExternusSeen: Answer,
    accessoryOrgansSeen: Answer,
    fusillaeOutsideSeen: Answer,
    secondReaderAgrees: Answer,
    secondReader: z.string().trim().max(200).nullable(),
    palpalBulbsOnAnimal: Answer.describe('On the living or dead animal, never expected on a skin'),
    eggSacLaid: Answer,
    legSpanMm: z.number().positive().max(500).nullable().describe('Of this skin, laid out or estimated; decides the size rules'),
  })
  .meta({ id: 'Checklist' });
export type Checklist = z.infer<typeof Checklist>;

/** Nothing answered yet. */
export const BLANK_CHECKLIST: Checklist = {
  skinMatchesAnimal: 'not-looked',
  grade: null,
  fourBookLungsFound: 'not-looked',
  view: null,
  condition: null,
  light: null,
  magnification: null,
  receptaclesSeen: 'not-looked',
  uterusExternusSeen: 'not-looked',
  accessoryOrgansSeen: 'not-looked',
  fusillaeOutsideSeen: 'not-looked',
  secondReaderAgrees: 'not-looked',
  secondReader: null,
  palpalBulbsOnAnimal: 'not-looked',
  eggSacLaid: 'not-looked',
  legSpanMm: null,
};

/** Answers that need the genital strip. With grade D there is none, so none of them may say yes or no. */
export const StripAnswer = z
  .enum(['receptaclesSeen', 'uterusExternusSeen', 'accessoryOrgansSeen', 'fusillaeOutsideSeen'])
  .meta({ id: 'StripAnswer' });
export type StripAnswer = z.infer<typeof StripAnswer>;

export const DeterminationDraft = z
  .object({
    sex: Sex,
    level: Level.nullable().describe('null exactly when unsexed'),
    reader: z.string().trim().min(1).max(200),
    readOn: CalendarDay,
    checklist: Checklist,
    evidencePhotoIds: z.array(z.string()).max(50),
    notes: z.string().max(20_000),
    supersedes: z.string().nullable().describe('An earlier determination of the same skin that this one corrects'),
  })
  .meta({ id: 'DeterminationDraft' });
export type DeterminationDraft = z.infer<typeof DeterminationDraft>;

/** A reading under way: nothing concluded yet, and no reader named until somebody is. */
export const UnfinishedDetermination = DeterminationDraft.extend({
  sex: Sex.nullable(),
  reader: z.string().max(200).nullable(),
});
export type UnfinishedDetermination = z.infer<typeof UnfinishedDetermination>;

/** Signed once, never changed. A later one adds; a withdrawn one stays visible with its reason. */
export const Determination = DeterminationDraft.extend({
  id: z.string(),
  exuviaId: z.string(),
  specimenId: z.string(),
  signedAt: Instant,
  withdrawn: z.object({ at: Instant, reason: z.string() }).nullable(),
}).meta({ id: 'Determination' });
export type Determination = z.infer<typeof Determination>;

/** The sign an animal carries in lists, from its whole history. `conflict` is never averaged away. */
export const SexSign = z
  .object({
    sex: Sex,
    level: Level.nullable(),
    conflict: z.boolean(),
  })
  .meta({ id: 'SexSign' });
export type SexSign = z.infer<typeof SexSign>;
