import type { ReactElement } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import style from './WhenField.module.css';
import { fieldValueOf } from './wallClock.ts';

interface Props {
  /** As a field of date and time has it; '' for now. */
  value: string;
  onChange: (value: string) => void;
  /** The present instant. */
  latest: string;
}

/** When the next key was seen: now, unless an earlier time is given. */
export function WhenField({ value, onChange, latest }: Props): ReactElement {
  if (value === '') {
    return (
      <p className={style['now']}>
        Noted as seen now.
        <Button kind="quiet" onClick={() => onChange(fieldValueOf(latest))}>
          It was earlier
        </Button>
      </p>
    );
  }
  return (
    <div className={style['earlier']}>
      <Field label="Seen at" hint="By the clock of this machine; holds for the next key.">
        {(control) => (
          <input
            {...control}
            type="datetime-local"
            value={value}
            max={fieldValueOf(latest)}
            onChange={(event) => event.target.value !== '' && onChange(event.target.value)}
          />
        )}
      </Field>
      <Button kind="quiet" onClick={() => onChange('')}>
        Now after all
      </Button>
    </div>
  );
}
