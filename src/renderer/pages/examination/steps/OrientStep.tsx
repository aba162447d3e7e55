import type { ReactElement } from 'react';
import { HANDS_CAUTION } from '../../../../words/cautions.ts';
import { CONDITION_LABELS, EXPERIENCE_LABELS, LIGHT_LABELS, MAGNIFICATION_LABELS, SIDE_LABELS } from '../../../../words/checklist.ts';
import { choicesOf } from '../../../../words/labels.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { WhereToLook } from '../plates/WhereToLook.tsx';
import { MeasuredLengths } from './MeasuredLengths.tsx';
import { QuestionRow } from './QuestionRow.tsx';
import { RadioRow } from './RadioRow.tsx';
import type { StepProps } from './StepProps.ts';

/** The right place, and how it was looked at. */
export function OrientStep(step: StepProps): ReactElement {
  const { reading, onAnswer } = step;
  const { view, condition, light, magnification, readerExperience } = reading.checklist;
  return (
    <>
      <Notice tone="warning">{HANDS_CAUTION}</Notice>
      <WhereToLook />
      <QuestionRow name="fourBookLungsFound" {...step} />
      <MeasuredLengths {...step} only={['book-lungs', 'furrow']} />
      <RadioRow beside legend="Side" value={view} options={choicesOf(SIDE_LABELS)} onChange={(chosen) => onAnswer({ view: chosen })} />
      <RadioRow
        beside
        legend="State"
        value={condition}
        options={choicesOf(CONDITION_LABELS)}
        onChange={(chosen) => onAnswer({ condition: chosen })}
      />
      <RadioRow beside legend="Light" value={light} options={choicesOf(LIGHT_LABELS)} onChange={(chosen) => onAnswer({ light: chosen })} />
      <RadioRow
        beside
        legend="Enlarged by"
        value={magnification}
        options={choicesOf(MAGNIFICATION_LABELS)}
        onChange={(chosen) => onAnswer({ magnification: chosen })}
      />
      <RadioRow
        legend="Has the reader read skins before?"
        explained="A first reading is worth less until it is held against a skin of known sex."
        value={readerExperience}
        options={choicesOf(EXPERIENCE_LABELS)}
        onChange={(chosen) => onAnswer({ readerExperience: chosen })}
      />
    </>
  );
}
