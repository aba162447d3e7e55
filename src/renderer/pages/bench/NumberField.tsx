import { type ReactElement, type ReactNode, useState } from 'react';
import { decimalFrom } from '../../forms/reading.ts';
import { TypedField } from '../../parts/TypedField.tsx';
import { useRefusedField } from './useRefusedField.ts';

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
  /** With `atOnce`: what stands in the field now can be no number of this kind. */
  onUnusable?: () => void;
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
  onUnusable,
}: Props): ReactElement {
  const [typed, setTyped] = useState<string | null>(null);
  const problem = typed === null ? undefined : problemWith(typed, least, most, aboveZero);
  useRefusedField(problem !== undefined && !atOnce);
  const commit = () => {
    if (typed === null || problem !== undefined) return;
    const number = decimalFrom(typed);
    setTyped(null);
    if (number !== value) onChange(number);
  };
  const type = (text: string) => {
    setTyped(text);
    if (!atOnce) return;
    if (problemWith(text, least, most, aboveZero) === undefined) onChange(decimalFrom(text));
    else onUnusable?.();
  };
  const shown = value === null ? '' : String(Number(value.toPrecision(figures)));
  const error = problem === undefined || shown === '' || atOnce ? problem : `${problem} Until then it stays ${shown}.`;
  return (
    <TypedField
      {...{ label, hint, error }}
      value={typed ?? shown}
      showsErrorInView
      onType={type}
      onCommit={commit}
      onDiscard={() => setTyped(null)}
      input={{ inputMode: 'decimal', className: 'figures' }}
    />
  );
}

function problemWith(typed: string, least: number, most: number, aboveZero: boolean): string | undefined {
  const number = decimalFrom(typed);
  if (!Number.isFinite(number)) return 'Type a number alone, such as 12.5.';
  if (aboveZero && number <= 0) return 'It must be more than 0.';
  if (number < least || number > most) return `It must lie between ${least} and ${most}.`;
  return undefined;
}
