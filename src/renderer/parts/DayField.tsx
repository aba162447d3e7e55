import type { ReactElement, ReactNode } from 'react';
import { dayInWords, dayOrderInWords } from '../../words/dates.ts';
import { Field } from './Field.tsx';

interface Props {
  label: string;
  hint?: ReactNode;
  error?: string | undefined;
  /** `YYYY-MM-DD`, or '' for none. */
  value: string;
  onChange: (value: string) => void;
  latest?: string | undefined;
  required?: boolean;
}

/**
 * A day. The browser takes and shows it in the local order of numbers, so the order is said below while there is none, and then the
 * day with its month in letters.
 */
export function DayField({ label, hint, error, value, onChange, latest, required }: Props): ReactElement {
  const said = (
    <>
      {value === '' ? `Typed as ${dayOrderInWords(new Intl.DateTimeFormat())}` : dayInWords(value)}
      {hint ? <> · {hint}</> : null}
    </>
  );
  return (
    <Field label={label} hint={said} error={error}>
      {(control) => (
        <input {...control} type="date" value={value} max={latest} required={required} onChange={(event) => onChange(event.target.value)} />
      )}
    </Field>
  );
}
