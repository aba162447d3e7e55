import type { ReactElement } from 'react';
import { Button } from '../../parts/Button.tsx';
import { DayField } from '../../parts/DayField.tsx';
import { TextField } from '../../parts/TextField.tsx';
import style from './WhenField.module.css';
import { type TypedMoment, typedOf } from './wallClock.ts';

interface Props {
  /** null for now. */
  value: TypedMoment | null;
  onChange: (value: TypedMoment | null) => void;
  /** What was typed is no time, and something was to be noted by it. */
  refused: boolean;
  /** The present instant. */
  latest: string;
}

/** When what the keys note was seen: now, unless an earlier time is given, which then holds until it is taken back. */
export function WhenField({ value, onChange, refused, latest }: Props): ReactElement {
  if (value === null) {
    return (
      <p className={style['now']}>
        Noted as seen now.
        <Button kind="quiet" onClick={() => onChange(typedOf(latest))}>
          It was earlier
        </Button>
      </p>
    );
  }
  return (
    <fieldset className={style['earlier']}>
      <legend>Seen earlier</legend>
      <div className={style['fields']}>
        <DayField label="Seen on" value={value.day} latest={typedOf(latest).day} onChange={(day) => onChange({ ...value, day })} />
        <TextField
          label="Seen at"
          hint="24 hours, as 21:05"
          error={refused ? 'Give a day and a time such as 9:05 or 21:05.' : undefined}
          value={value.time}
          onChange={(time) => onChange({ ...value, time })}
        />
      </div>
      <p>Holds for every key until you go back to now.</p>
      <Button onClick={() => onChange(null)}>Back to now</Button>
    </fieldset>
  );
}
