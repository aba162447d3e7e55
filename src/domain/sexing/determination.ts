import { z } from 'zod';
import { CalendarDay, Instant } from '../dates.ts';
import { ImagePoint } from '../measuring/points.ts';
import { SkinGrade } from '../molting/exuvia.ts';
import { SizeClass } from './evidence/sizeClass.ts';
import { GenusFlags, HooksState, ReceptacleForm } from './genus/profile.ts';

/** "Not seen" is three different answers: only `yes` and `no` weigh (`no` = readable and absent). */
export const Answer = z.enum(['yes', 'no', 'cannot-tell', 'not-looked']).meta({ id: 'Answer' });
export type Answer = z.infer<typeof Answer>;

/** `anomalous` (a gynandromorph, an animal that fits neither) is only ever said by hand: no rule concludes it. */
export const Sex = z.enum(['female', 'male', 'unsexed', 'anomalous']).meta({ id: 'Sex' });
export type Sex = z.infer<typeof Sex>;

/** The two sexes that evidence can speak for. */
export type ReadSex = Exclude<Sex, 'unsexed' | 'anomalous'>;

export const Level = z.enum(['leaning', 'probable', 'strong', 'established']).meta({ id: 'Level' });
export type Level = z.infer<typeof Level>;

/** A question of the first form was always asked; one that came later reads as not looked at in what was signed before. */
const LaterAnswer = Answer.default('not-looked');

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
    carapaceLengthMm: z.number().positive().max(100).nullable().default(null).describe('Of this skin'),
    receptacleForm: ReceptacleForm.nullable().default(null),
    flapLifts: LaterAnswer.describe('A hinged flap comes free with a blunt needle'),
    lowerLipSeen: LaterAnswer,
    genusProfileRead: LaterAnswer.describe('The female form of the genus was looked up before reading'),
    comparedWithReference: LaterAnswer.describe('With a skin of the same genus and size of known sex'),
    readerExperience: z.enum(['first-time', 'experienced']).nullable().default(null),
    secondReaderBlind: LaterAnswer.describe('The second reader did not know the first answer'),
    bulbsOnSkin: LaterAnswer.describe('Of the palps of this skin; never weighs, since a skin shows the instar before the ultimate molt'),
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
  carapaceLengthMm: null,
  receptacleForm: null,
  flapLifts: 'not-looked',
  lowerLipSeen: 'not-looked',
  genusProfileRead: 'not-looked',
  comparedWithReference: 'not-looked',
  readerExperience: null,
  secondReaderBlind: 'not-looked',
  bulbsOnSkin: 'not-looked',
};

/** Answers that need the genital strip. With grade D there is none, so none of them may say yes or no. */
export const StripAnswer = z
  .enum(['receptaclesSeen', 'flapLifts', 'uterusExternusSeen', 'lowerLipSeen', 'accessoryOrgansSeen', 'fusillaeOutsideSeen'])
  .meta({ id: 'StripAnswer' });
export type StripAnswer = z.infer<typeof StripAnswer>;

/** Fields of the checklist that a photo can be pinned to. */
export const PinnedQuestion = z
  .enum([
    'skinMatchesAnimal',
    'fourBookLungsFound',
    ...StripAnswer.options,
    'comparedWithReference',
    'bulbsOnSkin',
    'palpalBulbsOnAnimal',
    'eggSacLaid',
  ])
  .meta({ id: 'PinnedQuestion' });
export type PinnedQuestion = z.infer<typeof PinnedQuestion>;

/** Where on the upright photo the thing is. */
export const EvidenceMark = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('point'), at: ImagePoint }),
    z.object({ kind: z.literal('outline'), points: z.array(ImagePoint).min(3).max(200).describe('In order; the last joins the first') }),
  ])
  .meta({ id: 'EvidenceMark' });
export type EvidenceMark = z.infer<typeof EvidenceMark>;

/** A photo that shows why a question was answered as it was. */
export const EvidencePin = z
  .object({ question: PinnedQuestion, photoId: z.string().describe('One of the evidence photos'), mark: EvidenceMark.nullable() })
  .meta({ id: 'EvidencePin' });
export type EvidencePin = z.infer<typeof EvidencePin>;

export const DeterminationDraft = z
  .object({
    sex: Sex,
    level: Level.nullable().describe('null exactly when unsexed or anomalous'),
    reader: z.string().trim().min(1).max(200),
    readOn: CalendarDay,
    checklist: Checklist,
    evidencePhotoIds: z.array(z.string()).max(50),
    pins: z.array(EvidencePin).max(100).default([]),
    notes: z.string().max(20_000),
    supersedes: z.string().nullable().describe('An earlier determination of the same skin that this one corrects'),
  })
  .meta({ id: 'DeterminationDraft' });
export type DeterminationDraft = z.infer<typeof DeterminationDraft>;

/** The steps of the guided reading, in order. */
export const ReadingStep = z
  .enum(['match', 'grade', 'prepare', 'orient', 'look', 'compare', 'conclude', 'sign'])
  .meta({ id: 'ReadingStep' });
export type ReadingStep = z.infer<typeof ReadingStep>;

/** A reading under way: nothing concluded yet, and no reader named until somebody is. */
export const UnfinishedDetermination = DeterminationDraft.extend({
  sex: Sex.nullable(),
  reader: z.string().max(200).nullable(),
  step: ReadingStep.default('match'),
}).meta({ id: 'UnfinishedDetermination' });
export type UnfinishedDetermination = z.infer<typeof UnfinishedDetermination>;

/** The stored reading under way of one skin; version 0 and no body before the first save. */
export const ExaminationUnderWay = z
  .object({
    exuviaId: z.string(),
    reading: UnfinishedDetermination.nullable(),
    version: z.int().min(0),
    changedAt: Instant.nullable(),
    photosGone: z.array(z.string()).describe('Evidence of the reading that was removed since; pins on them can no longer be signed'),
  })
  .meta({ id: 'ExaminationUnderWay' });
export type ExaminationUnderWay = z.infer<typeof ExaminationUnderWay>;

/** How the sex was read: what the outcome log counts by. */
export const ReadingMethod = z
  .enum(['skin-stereomicroscope', 'skin-loupe', 'skin-naked-eye', 'skin-unstated', 'animal'])
  .meta({ id: 'ReadingMethod' });
export type ReadingMethod = z.infer<typeof ReadingMethod>;

/** What the model knew of the genus. What came after form 1 of the model was not kept before. */
export const SignedGenus = GenusFlags.extend({
  genus: z.string(),
  profileVersion: z.int().min(0).optional().describe('Of the keeper’s edits; 0 as shipped'),
  hooks: HooksState.optional(),
  adultCarapaceMm: z.number().positive().nullable().optional(),
  earlyColorKnown: z.boolean().optional().describe('Something says that the sexes are colored differently early'),
}).meta({ id: 'SignedGenus' });
export type SignedGenus = z.infer<typeof SignedGenus>;

/** What the machine made of the answers when they were signed. Kept as it was, whatever numbers and profiles become later. */
export const SignedAssessment = z
  .object({
    modelVersion: z.string().describe('`0` for the first form, which had no model'),
    method: ReadingMethod,
    sizeClass: SizeClass.nullable(),
    towards: z.enum(['female', 'male']).nullable(),
    band: z
      .enum(['unsexed', ...Level.options])
      .nullable()
      .describe('Null for the first form'),
    conflict: z.boolean(),
    genus: SignedGenus.nullable().describe('As the profile stood then'),
  })
  .meta({ id: 'SignedAssessment' });
export type SignedAssessment = z.infer<typeof SignedAssessment>;

/** Signed once, never changed. A later one adds; a withdrawn one stays visible with its reason. */
export const Determination = DeterminationDraft.extend({
  id: z.string(),
  exuviaId: z.string(),
  specimenId: z.string(),
  signedAt: Instant,
  assessment: SignedAssessment,
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
