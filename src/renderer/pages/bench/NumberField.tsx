import { type ReactElement, type ReactNode, useState } from 'react';
import { decimalFrom } from '../../forms/reading.ts';
import { Field } from '../../parts/Field.tsx';

interface Props {
  label: string;
  hint?: ReactNode;
  /** null shows an empty field. */
  value: number | null;
  /** Inclusive; `aboveZero` keeps 0 out. */
  least?: number;
  most: number;
  aboveZero?: boolean;
  /** Significant figures shown; what was typed is kept whole. */
  figures?: number;
  /** Counts with each key, for a field that a button beside it waits for. */
  atOnce?: boolean;
  onChange: (value: number) => void;
}

/** A number typed with a point or a comma. It counts when the field is left or Enter is pressed, and only if it can be one. */
export function NumberField({
  label,
  hint,
  value,
  least = 0,
  most,
  aboveZero = false,
  figures = 6,
  atOnce = false,
  onChange,
}: Props): ReactElement {
  const [typed, setTyped] = useState<string | null>(null);
  const problem = typed === null ? undefined : problemWith(typed, least, most, aboveZero);
  const commit = () => {
    if (typed === null || problem !== undefined) return;
    const number = decimalFrom(typed);
    setTyped(null);
    if (number !== value) onChange(number);
  };
  const type = (text: string) => {
    setTyped(text);
    if (atOnce && problemWith(text, least, most, aboveZero) === undefined) onChange(decimalFrom(text));
  };
  return (
    <Field label={label} hint={hint} error={problem}>
      {(control) => (
        <input
          {...control}
          inputMode="decimal"
          autoComplete="off"
          className="figures"
          value={typed ?? (value === null ? '' : String(Number(value.toPrecision(figures))))}
          onChange={(event) => type(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') {
              event.stopPropagation();
              setTyped(null);
            }
          }}
        />
      )}
    </Field>
  );
}

function problemWith(typed: string, least: number, most: number, aboveZero: boolean): string | undefined {
  const number = decimalFrom(typed);
  if (!Number.isFinite(number)) return 'Type a number alone, such as 12.5.';
  if (aboveZero && number <= 0) return 'It must be more than 0.';
  if (number < least || number > most) return `It must lie between ${least} and ${most}.`;
  return undefined;
}
