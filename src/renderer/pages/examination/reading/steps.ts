import { type Checklist, ReadingStep, StripAnswer, type UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';
import { QUESTIONS, type Question } from '../../../../words/checklist.ts';

export const STEP_NAMES: Readonly<Record<ReadingStep, string>> = {
  match: 'Match',
  grade: 'Grade',
  prepare: 'Prepare',
  orient: 'Orient',
  look: 'Look',
  compare: 'Compare',
  conclude: 'Conclude',
  sign: 'Sign',
};

/** One thing that a step asks, and whether it has been answered; "not looked" is none. */
export interface Asked {
  readonly label: string;
  readonly answered: boolean;
}

const SIZES = { legSpanMm: 'Leg span of this skin', carapaceLengthMm: 'Carapace of this skin' } as const;
const CHOICES = {
  grade: 'Grade of the genital strip',
  view: 'Side',
  condition: 'State',
  light: 'Light',
  magnification: 'Enlarged by',
  readerExperience: 'Whether the reader has read skins before',
  receptacleForm: 'Form of the receptacles',
} as const;

/** What each step asks, in the order in which it stands there. */
export function askedIn(step: ReadingStep, reading: UnfinishedDetermination, observer: string): Asked[] {
  const { checklist } = reading;
  const ask = (name: Question): Asked => ({ label: QUESTIONS[name].question, answered: checklist[name] !== 'not-looked' });
  const size = (name: keyof typeof SIZES): Asked => ({ label: SIZES[name], answered: checklist[name] !== null });
  const choice = (name: keyof typeof CHOICES): Asked => ({ label: CHOICES[name], answered: checklist[name] !== null });
  switch (step) {
    case 'match':
      return [ask('skinMatchesAnimal'), size('legSpanMm'), size('carapaceLengthMm')];
    case 'grade':
      return [choice('grade')];
    case 'prepare':
      return [];
    case 'orient':
      return [
        ask('fourBookLungsFound'),
        choice('view'),
        choice('condition'),
        choice('light'),
        choice('magnification'),
        choice('readerExperience'),
      ];
    case 'look':
      return lookedAt(checklist).map((name) => (name === 'receptacleForm' ? choice(name) : ask(name)));
    case 'compare':
      return [ask('comparedWithReference'), ask('palpalBulbsOnAnimal'), ask('eggSacLaid')];
    case 'conclude':
      return [{ label: 'What it is', answered: isConcluded(reading) }];
    case 'sign':
      return [
        ask('secondReaderAgrees'),
        { label: 'Who read it', answered: (reading.reader ?? observer).trim() !== '' },
        { label: 'A photo as evidence', answered: reading.evidencePhotoIds.length > 0 },
      ];
  }
}

/** First what a female of the genus shows. On a strip of grade D there is nothing to look at; a form is asked of receptacles that were seen. */
function lookedAt({ grade, receptaclesSeen }: Checklist): (Question | 'receptacleForm')[] {
  if (grade === 'D') return ['bulbsOnSkin'];
  const form = receptaclesSeen === 'yes' ? (['receptacleForm'] as const) : [];
  const strip = StripAnswer.options.flatMap((name) => (name === 'receptaclesSeen' ? [name, ...form] : [name]));
  return ['genusProfileRead', ...strip, 'bulbsOnSkin'];
}

function isConcluded({ sex, level }: UnfinishedDetermination): boolean {
  return sex === 'unsexed' || sex === 'anomalous' || (sex !== null && level !== null);
}

/** What has not been answered, step by step; steps with nothing open are left out. */
export function openIn(reading: UnfinishedDetermination, observer: string): { step: ReadingStep; labels: string[] }[] {
  return ReadingStep.options
    .map((step) => ({
      step,
      labels: askedIn(step, reading, observer)
        .filter(({ answered }) => !answered)
        .map(({ label }) => label),
    }))
    .filter(({ labels }) => labels.length > 0);
}

export function stepAfter(step: ReadingStep, by: 1 | -1): ReadingStep | null {
  return ReadingStep.options[ReadingStep.options.indexOf(step) + by] ?? null;
}
