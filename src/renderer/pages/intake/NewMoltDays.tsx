import type { ReactElement } from 'react';
import type { CalendarDay } from '../../../domain/dates.ts';
import { dayInWords } from '../../../words/dates.ts';
import { Button } from '../../parts/Button.tsx';
import { CheckField } from '../../parts/CheckField.tsx';
import { DayField } from '../../parts/DayField.tsx';
import style from './OwnerForm.module.css';
import type { DayField as DayFieldName, OwnerChoice } from './ownerForm.ts';

interface Props {
  choice: OwnerChoice;
  /** When the first of the photos was taken, where that is known. */
  photoDay: CalendarDay | null;
  today: CalendarDay;
  faults: Partial<Record<DayFieldName, string>>;
  onChange: (part: Partial<OwnerChoice>) => void;
}

/** The day of a new molt, or the two days between which it happened. A photo is taken after the molt, so its day is only offered. */
export function NewMoltDays({ choice, photoDay, today, faults, onChange }: Props): ReactElement {
  const whence = choice.newMoltOn === photoDay ? 'the day of the photo' : undefined;
  return (
    <>
      <CheckField checked={choice.dayKnown} onChange={(dayKnown) => onChange({ dayKnown })}>
        The day of the molt is known
      </CheckField>
      {choice.dayKnown ? (
        <>
          <DayField
            label="Molted on"
            hint={whence}
            error={faults.newMoltOn}
            value={choice.newMoltOn}
            latest={today}
            required
            onChange={(newMoltOn) => onChange({ newMoltOn })}
          />
          {photoDay !== null && choice.newMoltOn === '' && (
            <div>
              <Button kind="plain" onClick={() => onChange({ newMoltOn: photoDay })}>
                The day of the photo, {dayInWords(photoDay)}
              </Button>
            </div>
          )}
        </>
      ) : (
        <div className={style['pair']}>
          <DayField
            label="Last seen unmolted"
            error={faults.newMoltFrom}
            value={choice.newMoltFrom}
            latest={today}
            required
            onChange={(newMoltFrom) => onChange({ newMoltFrom })}
          />
          <DayField
            label="Found molted"
            error={faults.newMoltTo}
            value={choice.newMoltTo}
            latest={today}
            required
            onChange={(newMoltTo) => onChange({ newMoltTo })}
          />
        </div>
      )}
    </>
  );
}
