import type { ReactElement, ReactNode } from 'react';
import { Field } from './Field.tsx';

interface Props {
  label: string;
  hint?: ReactNode;
  error?: string | undefined;
  value: string;
  onChange: (value: string) => void;
  /** `lines`: room for several; `whole`: a whole number, still handed over as text. */
  kind?: 'line' | 'lines' | 'whole';
  maxLength?: number;
  /** Offered while typing; anything else can be written too. */
  suggestions?: readonly string[];
  required?: boolean;
}

/** A labeled field for text or a whole number. */
export function TextField({
  label,
  hint,
  error,
  value,
  onChange,
  kind = 'line',
  maxLength,
  suggestions = [],
  required,
}: Props): ReactElement {
  // Said, not cut: what was typed or pasted stays whole until it is shortened.
  const tooLong = maxLength !== undefined && value.trim().length > maxLength;
  return (
    <Field label={label} hint={hint} error={tooLong ? `Too long: ${value.length} of at most ${maxLength} characters.` : error}>
      {(control) => {
        const shared = { ...control, value, required };
        if (kind === 'lines') return <textarea {...shared} onChange={(event) => onChange(event.target.value)} />;
        const listId = suggestions.length > 0 ? `${control.id}-list` : undefined;
        return (
          <>
            <input
              {...shared}
              list={listId}
              autoComplete="off"
              inputMode={kind === 'whole' ? 'numeric' : undefined}
              onChange={(event) => onChange(event.target.value)}
            />
            {listId && (
              <datalist id={listId}>
                {suggestions.map((suggestion) => (
                  <option key={suggestion} value={suggestion} />
                ))}
              </datalist>
            )}
          </>
        );
      }}
    </Field>
  );
}
