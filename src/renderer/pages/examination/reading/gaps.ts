import type { DeterminationDraft, UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';
import type { Assessment } from '../../../../domain/sexing/levels.ts';
import { rankOf } from '../../../../domain/sexing/rank.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { LEVEL_LABELS } from '../../../../words/labels.ts';
import { asSigned } from './asSigned.ts';

/** What is wrong with which field of the conclusion. */
export type Gaps = Readonly<Partial<Record<'sex' | 'level' | 'reader' | 'readOn', string>>>;

export const NO_GAPS: Gaps = {};

export type Finished = { readonly draft: DeterminationDraft; readonly gaps: null } | { readonly draft: null; readonly gaps: Gaps };

interface Known {
  readonly observer: string;
  readonly today: string;
  /** The first day on which the skin can have been shed. */
  readonly shedFrom: string;
  readonly assessments: Readonly<Record<'female' | 'male', Assessment>>;
}

/** A reading that can be signed, or what it lacks. */
export function finished(reading: UnfinishedDetermination, { observer, today, shedFrom, assessments }: Known): Finished {
  const { sex, level } = reading;
  const reader = (reading.reader ?? observer).trim();
  const gaps: Gaps = {
    ...(sex === null && { sex: 'Choose one; “unsexed” is an honest answer.' }),
    ...((sex === 'female' || sex === 'male') && levelGap(level, assessments[sex])),
    ...(reader === '' && { reader: 'Say who read the skin.' }),
    ...(reading.readOn > today && { readOn: 'This day has not come yet.' }),
    ...(reading.readOn < shedFrom && { readOn: `This skin was shed on ${dayInWords(shedFrom)}; it was read on that day or later.` }),
  };
  if (sex === null || Object.keys(gaps).length > 0) return { draft: null, gaps };
  const { step: _, ...unsigned } = reading;
  const checklist = asSigned(unsigned.checklist);
  return { draft: { ...unsigned, checklist, sex, level: sex === 'female' || sex === 'male' ? level : null, reader }, gaps: null };
}

function levelGap(level: UnfinishedDetermination['level'], { highest }: Assessment): Gaps {
  if (highest === null) return { level: 'The answers do not support this sex at any level.' };
  if (level === null) return { level: 'Choose how sure it is.' };
  return rankOf(level) > rankOf(highest) ? { level: `The answers now support no more than “${LEVEL_LABELS[highest]}”.` } : {};
}
