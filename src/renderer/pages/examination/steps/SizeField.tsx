import { type ReactElement, useState } from 'react';
import type { Estimate } from '../../../../domain/measuring/quantity.ts';
import { decimalFrom } from '../../../forms/reading.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import style from './SizeField.module.css';

interface Props {
  label: string;
  hint: string;
  lengthMm: number | null;
  /** Of the skin, as the Bench measured it; null where no photo of it gives one. */
  measured: Estimate | null;
  largestMm: number;
  decimals: 0 | 1;
  onChange: (lengthMm: number | null) => void;
}

/** How large the skin is: typed, or taken from the Bench. */
export function SizeField({ label, hint, lengthMm, measured, largestMm, decimals, onChange }: Props): ReactElement {
  const [typed, setTyped] = useState(lengthMm === null ? '' : String(lengthMm));
  const lengthFrom = (text: string): number | null => {
    const length = decimalFrom(text);
    return length > 0 && length <= largestMm ? length : null;
  };
  const measuredMm = measured && Number(measured.value.toFixed(decimals));
  const refused = typed.trim() !== '' && lengthFrom(typed) === null;
  const set = (text: string) => {
    setTyped(text);
    onChange(lengthFrom(text));
  };
  return (
    <div className={style['row']}>
      <div className={style['field']}>
        <Field label={label} hint={hint} error={refused ? `A length in millimeters, above 0 and up to ${largestMm}.` : undefined}>
          {(control) => <input {...control} inputMode="decimal" value={typed} onChange={(event) => set(event.target.value)} />}
        </Field>
      </div>
      {measuredMm !== null && measuredMm !== lengthMm && (
        <Button onClick={() => set(String(measuredMm))}>Take {measuredMm} mm from the Bench</Button>
      )}
    </div>
  );
}
