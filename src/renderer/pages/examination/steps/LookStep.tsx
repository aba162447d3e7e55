import type { ReactElement } from 'react';
import { StripAnswer } from '../../../../domain/sexing/determination.ts';
import { ReceptacleForm } from '../../../../domain/sexing/genus/profile.ts';
import { HANDS_CAUTION } from '../../../../words/cautions.ts';
import { FORM_LABELS } from '../../../../words/checklist.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { VentralPlate } from '../../../parts/plates/VentralPlate.tsx';
import { Select } from '../../../parts/Select.tsx';
import { BeforeLooking } from '../genera/BeforeLooking.tsx';
import { FormPlate } from '../plates/FormPlate.tsx';
import { OuterPlate } from '../plates/OuterPlate.tsx';
import style from './LookStep.module.css';
import { MeasuredLengths } from './MeasuredLengths.tsx';
import { QuestionRow } from './QuestionRow.tsx';
import type { StepProps } from './StepProps.ts';

const FORMS = [{ value: '' as const, label: 'Not said' }, ...ReceptacleForm.options.map((value) => ({ value, label: FORM_LABELS[value] }))];

const ABSENT_AND_SEEN = 'Receptacles were answered as seen, so their form cannot be “absent”: one of the two is a slip.';

/** What there is to be seen, with the drawings to hold it against. */
export function LookStep(step: StepProps): ReactElement {
  const { sheet, reading, onAnswer } = step;
  const { checklist } = reading;
  const others = StripAnswer.options.filter((name) => name !== 'receptaclesSeen');
  return (
    <>
      <BeforeLooking profile={sheet.genus} />
      {checklist.grade !== 'D' && <QuestionRow name="genusProfileRead" {...step} />}
      <Notice tone="warning">{HANDS_CAUTION}</Notice>
      <details className={style['plates']}>
        <summary>Drawings: both sexes from inside, the forms of receptacles, and the outer side</summary>
        <VentralPlate />
        <FormPlate />
        <OuterPlate />
      </details>
      <QuestionRow name="receptaclesSeen" {...step} />
      <MeasuredLengths {...step} only={['receptacle-width', 'receptacle-height', 'own']} />
      {checklist.receptaclesSeen === 'yes' && checklist.grade !== 'D' && (
        <div className={style['form']}>
          <Select
            label="Which form have they?"
            hint="A young female can show another form than an adult one of her genus: it is no reason to doubt her."
            value={checklist.receptacleForm ?? ''}
            options={FORMS.filter(({ value }) => value !== 'absent' || checklist.receptacleForm === 'absent')}
            error={checklist.receptacleForm === 'absent' ? ABSENT_AND_SEEN : undefined}
            onChange={(form) => onAnswer({ receptacleForm: form === '' ? null : form })}
          />
        </div>
      )}
      {others.map((name) => (
        <QuestionRow key={name} name={name} {...step} />
      ))}
      <QuestionRow name="bulbsOnSkin" {...step} />
    </>
  );
}
