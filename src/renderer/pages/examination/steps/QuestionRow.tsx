import type { ReactElement } from 'react';
import { Answer, type Checklist, PinnedQuestion, StripAnswer } from '../../../../domain/sexing/determination.ts';
import { QUESTIONS, type Question } from '../../../../words/checklist.ts';
import { PinLine } from '../evidence/PinLine.tsx';
import { asSigned } from '../reading/asSigned.ts';
import style from './QuestionRow.module.css';
import { RadioRow } from './RadioRow.tsx';
import type { StepProps } from './StepProps.ts';

const CLOSED_BY_GRADE_D = 'Closed: with grade D there is no strip to read.';
const ABOUT_THE_ANIMAL: readonly string[] = ['palpalBulbsOnAnimal', 'eggSacLaid'] satisfies PinnedQuestion[];

/** One question of the checklist with its four answers, and the photos that show why. */
export function QuestionRow({ name, ...step }: { name: Question } & StepProps): ReactElement {
  const { reading, table, onAnswer, onChange } = step;
  const { question, explained, answers } = QUESTIONS[name];
  const closed = StripAnswer.options.some((answer) => answer === name) && reading.checklist.grade === 'D';
  const pinned = PinnedQuestion.options.find((one) => one === name);
  return (
    <div className={style['row']}>
      <RadioRow
        legend={question}
        explained={explained}
        value={asSigned(reading.checklist)[name]}
        options={Answer.options.map((value) => ({ value, label: answers[value] }))}
        onChange={(answer) => onAnswer({ [name]: answer } satisfies Partial<Checklist>)}
        closed={closed ? CLOSED_BY_GRADE_D : undefined}
      />
      {pinned !== undefined && !closed && (
        <PinLine
          question={pinned}
          photos={ABOUT_THE_ANIMAL.includes(name) ? table.animalPhotos : table.skinPhotos}
          shown={table.shown}
          evidence={reading}
          onEvidence={onChange}
        />
      )}
    </div>
  );
}
