import type { ReactElement } from 'react';
import type { SkinGrade } from '../../../domain/molting/exuvia.ts';
import type { UnfinishedDetermination } from '../../../domain/sexing/determination.ts';
import type { Assessment } from '../../../domain/sexing/levels.ts';
import { LEVELS, rankOf } from '../../../domain/sexing/rank.ts';
import { counted } from '../../../words/counts.ts';
import { capitalized, choicesOf, LEVEL_LABELS, SEX_LABELS } from '../../../words/labels.ts';
import { Button } from '../../parts/Button.tsx';
import { CheckField } from '../../parts/CheckField.tsx';
import { DayField } from '../../parts/DayField.tsx';
import { Field } from '../../parts/Field.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import style from './Conclusion.module.css';
import { Group } from './Group.tsx';
import { type Gaps, NO_GAPS } from './gaps.ts';
import { RadioRow } from './RadioRow.tsx';
import { StillMissing } from './StillMissing.tsx';

interface Props {
  reading: UnfinishedDetermination;
  /** Of whoever uses this window, where the reading names nobody. */
  observer: string;
  today: string;
  assessments: Readonly<Record<'female' | 'male', Assessment>>;
  /** What has to be filled in before signing; shown once signing was tried. */
  gaps: Gaps | null;
  /** What signing writes to the skin's own record; null where it says the same already. */
  grading: { readonly read: SkinGrade; readonly onRecord: SkinGrade | null; readonly write: boolean } | null;
  onWriteGrade: (write: boolean) => void;
  busy: boolean;
  error: unknown;
  onChange: (changes: Partial<UnfinishedDetermination>) => void;
  onSign: () => void;
}

/** What the keeper concludes, and the signature under it. */
export function Conclusion(props: Props): ReactElement {
  const { reading, observer, today, assessments, gaps, grading, onWriteGrade, busy, error, onChange, onSign } = props;
  const { sex, level } = reading;
  const shown = gaps ?? NO_GAPS;
  return (
    <Group title="Conclude" note="The conclusion is yours. The answers only limit how sure it may be called; less is always allowed.">
      <RadioRow
        legend="What is it?"
        value={sex}
        options={choicesOf(SEX_LABELS)}
        onChange={(chosen) => onChange({ sex: chosen, level: null })}
        error={shown.sex}
      />
      {(sex === 'female' || sex === 'male') && (
        <>
          <RadioRow
            legend="How sure?"
            value={level}
            options={LEVELS.map((value) => ({
              value,
              label: capitalized(LEVEL_LABELS[value]),
              disabled: !reaches(assessments[sex], value),
            }))}
            onChange={(chosen) => onChange({ level: chosen })}
            error={shown.level}
          />
          <StillMissing assessment={assessments[sex]} />
        </>
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
          error={shown.readOn}
          latest={today}
          value={reading.readOn}
          onChange={(readOn) => readOn !== '' && onChange({ readOn })}
        />
      </div>
      <Field label="Notes" hint="What would change your mind, what was not checked, what the form of the receptacles was.">
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
    </Group>
  );
}

function reaches({ highest }: Assessment, level: (typeof LEVELS)[number]): boolean {
  return highest !== null && rankOf(level) <= rankOf(highest);
}
