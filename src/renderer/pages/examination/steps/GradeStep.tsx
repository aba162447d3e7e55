import type { ReactElement } from 'react';
import { SkinGrade } from '../../../../domain/molting/exuvia.ts';
import { choicesOf, GRADE_LABELS, GRADE_MEANINGS } from '../../../../words/labels.ts';
import { Notice } from '../../../parts/Notice.tsx';
import style from './GradeStep.module.css';
import { RadioRow } from './RadioRow.tsx';
import type { StepProps } from './StepProps.ts';

/** How well the strip can be read, with what each letter means. */
export function GradeStep({ reading, onAnswer }: StepProps): ReactElement {
  const { checklist } = reading;
  return (
    <>
      <RadioRow
        legend="What grade is the genital strip?"
        explained="The strip lies between the front book lungs."
        value={checklist.grade}
        options={choicesOf(GRADE_LABELS)}
        onChange={(grade) => onAnswer({ grade })}
      />
      {checklist.grade === 'D' && (
        <Notice tone="warning" title="Grade D ends what the strip can say.">
          Questions about the strip are closed, and whatever was answered there counts as “cannot tell”. Another grade brings the answers
          back until this is signed. The skin can still be measured and signed as unsexed; signs of the animal itself still count.
        </Notice>
      )}
      <dl className={style['legend']} aria-label="What the letters mean">
        {SkinGrade.options.map((letter) => (
          <div key={letter} className={checklist.grade === letter ? style['chosen'] : undefined}>
            <dt>{letter}</dt>
            <dd>{GRADE_MEANINGS[letter]}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
