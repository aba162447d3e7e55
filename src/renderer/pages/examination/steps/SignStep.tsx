import type { ReactElement } from 'react';
import type { SkinGrade } from '../../../../domain/molting/exuvia.ts';
import type { ReadingStep } from '../../../../domain/sexing/determination.ts';
import { counted } from '../../../../words/counts.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { sexInWords } from '../../../../words/sex.ts';
import { Button } from '../../../parts/Button.tsx';
import { CheckField } from '../../../parts/CheckField.tsx';
import { DayField } from '../../../parts/DayField.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FailureNotice, Notice } from '../../../parts/Notice.tsx';
import { type Gaps, NO_GAPS } from '../reading/gaps.ts';
import { openIn, STEP_NAMES } from '../reading/steps.ts';
import { QuestionRow } from './QuestionRow.tsx';
import style from './SignStep.module.css';
import type { StepProps } from './StepProps.ts';

interface Props extends StepProps {
  /** Of whoever uses this window, where the reading names nobody. */
  observer: string;
  today: string;
  /** What has to be filled in before signing; shown once signing was tried. */
  gaps: Gaps | null;
  /** What signing writes to the skin's own record; null where it says the same already. */
  grading: { readonly read: SkinGrade; readonly onRecord: SkinGrade | null; readonly write: boolean } | null;
  onWriteGrade: (write: boolean) => void;
  onGo: (step: ReadingStep) => void;
  busy: boolean;
  error: unknown;
  onSign: () => void;
}

/** What is still open, who has read it, and the signature. */
export function SignStep(props: Props): ReactElement {
  const { observer, today, gaps, grading, onWriteGrade, onGo, busy, error, onSign, ...step } = props;
  const { sheet, reading, onAnswer, onChange } = step;
  const { sex, level, checklist } = reading;
  const shown = gaps ?? NO_GAPS;
  const missing = openIn(reading, observer).filter((one) => one.step !== 'sign');
  return (
    <>
      <p className={style['concluded']}>
        {sex === null ? 'Nothing concluded yet.' : `Concluded: ${sexInWords({ sex, level, conflict: false })}.`}{' '}
        <Button kind="quiet" onClick={() => onGo('conclude')}>
          {sex === null ? 'To the conclusion' : 'Change it'}
        </Button>
      </p>
      {(shown.sex ?? shown.level) !== undefined && <Notice tone="refusal" title={shown.sex ?? shown.level} />}
      {missing.length > 0 && (
        <section aria-labelledby="left-open" className={style['open']}>
          <h3 id="left-open">Left open</h3>
          <p className={style['soft']}>Nothing of it has to be answered: what was not looked at weighs nothing, and is signed as such.</p>
          <ul>
            {missing.map(({ step: one, labels }) => (
              <li key={one}>
                <Button kind="quiet" onClick={() => onGo(one)}>
                  {STEP_NAMES[one]}
                </Button>
                <span>{labels.join(' · ')}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <div className={style['fields']}>
        <Field label="Read by" error={shown.reader}>
          {(control) => (
            <input
              {...control}
              maxLength={200}
              value={reading.reader ?? observer}
              onChange={(event) => onChange({ reader: event.target.value })}
            />
          )}
        </Field>
        <DayField
          label="Read on"
          hint={`Shed ${dayInWords(sheet.molt.happenedFrom)}`}
          error={shown.readOn}
          latest={today}
          value={reading.readOn}
          onChange={(readOn) => readOn !== '' && onChange({ readOn })}
        />
        <Field label="Name of the second reader" hint="Leave it empty if nobody else has read it.">
          {(control) => (
            <input
              {...control}
              maxLength={200}
              value={checklist.secondReader ?? ''}
              onChange={(event) => onAnswer({ secondReader: event.target.value === '' ? null : event.target.value })}
            />
          )}
        </Field>
      </div>
      <QuestionRow name="secondReaderAgrees" {...step} />
      {(checklist.secondReaderAgrees === 'yes' || checklist.secondReaderAgrees === 'no') && (
        <QuestionRow name="secondReaderBlind" {...step} />
      )}
      <Field label="Notes" hint="What was not checked, what was odd, what would change your mind.">
        {(control) => (
          <textarea {...control} maxLength={20_000} value={reading.notes} onChange={(event) => onChange({ notes: event.target.value })} />
        )}
      </Field>
      {error !== null && <FailureNotice error={error} />}
      {grading && (
        <div className={style['grading']}>
          <CheckField checked={grading.write} onChange={onWriteGrade}>
            Signing also writes grade {grading.read} to the skin’s record
            {grading.onRecord === null ? ', which has no grade yet' : `, in place of grade ${grading.onRecord}; the earlier one is kept`}
          </CheckField>
        </div>
      )}
      <div className={style['sign']}>
        <Button kind="primary" icon="check" busy={busy} onClick={onSign}>
          {reading.supersedes === null ? 'Sign' : 'Sign the correction'}
        </Button>
        <p className={style['signNote']}>
          {reading.evidencePhotoIds.length === 0
            ? 'Without a photo as evidence. '
            : `With ${counted(reading.evidencePhotoIds.length, 'photo')} as evidence. `}
          A signed determination stays: later ones add to it, and it can be corrected or withdrawn, never changed.
        </p>
      </div>
    </>
  );
}
