import { type Answer, type Checklist, StripAnswer } from '../domain/sexing/determination.ts';
import { GRADE_LABELS } from './labels.ts';

/** Fields of the checklist that take one of the four answers. */
export type Question = {
  [Name in keyof Checklist]: Checklist[Name] extends Answer ? Name : never;
}[keyof Checklist];

export interface QuestionWords {
  /** The question as it is asked. */
  question: string;
  /** Why it is asked, and what to look at. */
  explained: string;
  answers: Readonly<Record<Answer, string>>;
}

const PLAIN: QuestionWords['answers'] = { yes: 'Yes', no: 'No', 'cannot-tell': 'Cannot tell', 'not-looked': 'Not looked' };
/** Where "no" is evidence, it says what it takes: the place could be read, and the thing was not there. */
const SEEN: QuestionWords['answers'] = { ...PLAIN, yes: 'Seen', no: 'Readable and absent' };

export const QUESTIONS: Readonly<Record<Question, QuestionWords>> = {
  skinMatchesAnimal: {
    question: 'Does this skin belong to this animal?',
    explained: 'Go by its label, the day it was found, and that nobody else shared the box. Mixed-up skins are a common error.',
    answers: { ...PLAIN, 'not-looked': 'Not checked' },
  },
  fourBookLungsFound: {
    question: 'Are all four book lungs found?',
    explained: 'Four pale patches in two pairs. The place to read lies between the front pair; only all four show which pair that is.',
    answers: PLAIN,
  },
  receptaclesSeen: {
    question: 'Is there a flap, or are there lobes or stalks, at the furrow?',
    explained:
      'The receptacles of a female stand up just in front of the furrow and lift with a blunt needle. The form depends on the genus.',
    answers: SEEN,
  },
  flapLifts: {
    question: 'Does it lift with a blunt needle?',
    explained:
      'A hinged flap that comes free of the wall is a female’s. Lift it under water; do not pull across the midline. It is kept on record and adds no weight to the receptacles.',
    answers: { ...PLAIN, 'not-looked': 'Not tried' },
  },
  uterusExternusSeen: {
    question: 'Is there a uterus externus?',
    explained:
      'The lip from which receptacles rise. Females have it, males do not: it tells receptacles from the accessory organs of a male.',
    answers: SEEN,
  },
  lowerLipSeen: {
    question: 'Is there a lower lip?',
    explained: 'The rear margin of a female’s opening. It is kept on record and adds no weight: the upper lip is what tells.',
    answers: SEEN,
  },
  accessoryOrgansSeen: {
    question: 'Are there small paired bodies without a lip?',
    explained: 'Accessory organs, which males of some genera carry in the very place of the receptacles.',
    answers: SEEN,
  },
  fusillaeOutsideSeen: {
    question: 'On the outer side: is there an arc or ring of fusillae?',
    explained:
      'Extra spigots between the front book lungs, for the sperm web. The only thing on a skin that speaks for a male by being there.',
    answers: SEEN,
  },
  bulbsOnSkin: {
    question: 'Do the palps of this skin carry bulbs?',
    explained:
      'Not to be expected, and it says nothing here: a male gets his bulbs with his last molt, so the skin he leaves then is of the instar before. Bulbs on a skin mean a rare molt after the last one, or the skin of another animal.',
    answers: { ...PLAIN, yes: 'Yes', no: 'No, as expected' },
  },
  genusProfileRead: {
    question: 'Was the female form of this genus looked up first?',
    explained: 'Accessory organs of a male look like receptacles to whoever does not know what a female of the genus shows.',
    answers: PLAIN,
  },
  comparedWithReference: {
    question: 'Was it compared with a skin of known sex?',
    explained: 'Of the same genus and about the same size.',
    answers: PLAIN,
  },
  palpalBulbsOnAnimal: {
    question: 'Were palpal bulbs seen on the animal?',
    explained:
      'Look at the animal, not at its skin. A male gets his bulbs with his last molt, so the skin he leaves then still has plain palps, and no skin is expected to show bulbs. That none are on this skin says nothing at all.',
    answers: { ...PLAIN, yes: 'Seen', no: 'Looked, none' },
  },
  eggSacLaid: {
    question: 'Has the animal laid an egg sac?',
    explained: 'Fertile or not.',
    answers: { ...PLAIN, 'not-looked': 'Not known' },
  },
  secondReaderAgrees: {
    question: 'Does the second reader agree?',
    explained: 'Independent means: read without knowing the first answer.',
    answers: { ...PLAIN, 'not-looked': 'Not asked' },
  },
  secondReaderBlind: {
    question: 'Did the second reader not know the first answer?',
    explained: 'Only then do two readers count for a little more than one; they still share one skin.',
    answers: { ...PLAIN, 'not-looked': 'Not known' },
  },
};

type Choices<Value extends string> = Readonly<Record<Value, string>>;

export const SIDE_LABELS: Choices<NonNullable<Checklist['view']>> = { inside: 'Inner side', outside: 'Outer side', both: 'Both' };
export const CONDITION_LABELS: Choices<NonNullable<Checklist['condition']>> = { wet: 'Wet', dry: 'Dry', both: 'Both' };
export const LIGHT_LABELS: Choices<NonNullable<Checklist['light']>> = {
  transmitted: 'Through the skin',
  side: 'From the side',
  both: 'Both',
};
export const MAGNIFICATION_LABELS: Choices<NonNullable<Checklist['magnification']>> = {
  'naked-eye': 'Naked eye',
  loupe: 'Loupe',
  stereomicroscope: 'Stereomicroscope',
};

export const EXPERIENCE_LABELS: Choices<NonNullable<Checklist['readerExperience']>> = {
  'first-time': 'No, a first time',
  experienced: 'Yes',
};
export const FORM_LABELS: Choices<NonNullable<Checklist['receptacleForm']>> = {
  'paired-separate': 'Two, separate',
  sessile: 'Sessile: a lobe on the wall, without a stalk',
  'paired-joined-base': 'Two with a joined base',
  'single-undivided': 'One, undivided',
  'single-notched': 'One, notched',
  'multi-lobed': 'Many lobes',
  spiral: 'Spiral or S-shaped',
  'with-lateral-chamber': 'With a chamber at the side',
  capitate: 'With a knob',
  acapitate: 'Without a knob',
  'weakly-sclerotized': 'Weakly sclerotized',
  absent: 'Absent',
  'anomalous-conjoined': 'Anomalous or conjoined',
  'juvenile-undetermined': 'A juvenile’s, not determined',
};

const NOT_SAID = 'Not said';

/** The whole checklist in the order in which it is asked, with each answer in the words it was given in. */
export function answersInWords(checklist: Checklist): { question: string; answer: string }[] {
  const asked = (name: Question) => ({ question: QUESTIONS[name].question, answer: QUESTIONS[name].answers[checklist[name]] });
  const chosen = (question: string, answer: string | undefined) => ({ question, answer: answer ?? NOT_SAID });
  const { grade, view, condition, light, magnification, legSpanMm, carapaceLengthMm, secondReader, readerExperience, receptacleForm } =
    checklist;
  return [
    asked('skinMatchesAnimal'),
    chosen('Leg span of this skin', legSpanMm === null ? undefined : `${legSpanMm} mm`),
    chosen('Grade of the genital strip', grade === null ? undefined : GRADE_LABELS[grade]),
    asked('fourBookLungsFound'),
    chosen('Side', view === null ? undefined : SIDE_LABELS[view]),
    chosen('State', condition === null ? undefined : CONDITION_LABELS[condition]),
    chosen('Light', light === null ? undefined : LIGHT_LABELS[light]),
    chosen('Enlarged by', magnification === null ? undefined : MAGNIFICATION_LABELS[magnification]),
    chosen('Carapace of this skin', carapaceLengthMm === null ? undefined : `${carapaceLengthMm} mm`),
    chosen('The reader has read skins before', readerExperience === null ? undefined : EXPERIENCE_LABELS[readerExperience]),
    chosen('Form of the receptacles', receptacleForm === null ? undefined : FORM_LABELS[receptacleForm]),
    ...StripAnswer.options.map(asked),
    asked('genusProfileRead'),
    asked('comparedWithReference'),
    asked('bulbsOnSkin'),
    asked('palpalBulbsOnAnimal'),
    asked('eggSacLaid'),
    chosen('Second reader', secondReader ?? undefined),
    asked('secondReaderAgrees'),
    asked('secondReaderBlind'),
  ];
}
