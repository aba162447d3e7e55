import type { ReactElement, ReactNode } from 'react';
import { Field } from './Field.tsx';

interface Props<Value extends string> {
  label: string;
  hint?: ReactNode;
  error?: string | undefined;
  value: Value;
  /** In the order shown. */
  options: readonly { value: Value; label: string }[];
  onChange: (value: Value) => void;
  disabled?: boolean;
}

/** One choice of a few. For "not said" give an option with the value ''. */
export function Select<Value extends string>({ label, hint, error, value, options, onChange, disabled }: Props<Value>): ReactElement {
  return (
    <Field label={label} hint={hint} error={error}>
      {(control) => (
        <select
          {...control}
          value={value}
          disabled={disabled}
          onChange={(event) => {
            const chosen = options.find((option) => option.value === event.target.value);
            if (chosen) onChange(chosen.value);
          }}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
