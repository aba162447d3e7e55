import { type ReactElement, useState } from 'react';
import type { Estimate } from '../../../domain/measuring/quantity.ts';
import { LARGE_LEG_SPAN_MM } from '../../../domain/sexing/facts.ts';
import { decimalFrom } from '../../forms/reading.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import style from './LegSpanField.module.css';

interface Props {
  legSpanMm: number | null;
  /** Of the skin, as the Bench measured it; null where no photo of it gives one. */
  measured: Estimate | null;
  onChange: (legSpanMm: number | null) => void;
}

const LARGEST_MM = 500;

/** How large the skin is, for the rules about size: typed, or taken from the Bench. */
export function LegSpanField({ legSpanMm, measured, onChange }: Props): ReactElement {
  const [typed, setTyped] = useState(legSpanMm === null ? '' : String(legSpanMm));
  const measuredMm = measured && Math.round(measured.value);
  const refused = typed.trim() !== '' && lengthFrom(typed) === null;
  const set = (text: string) => {
    setTyped(text);
    onChange(lengthFrom(text));
  };
  return (
    <div className={style['row']}>
      <div className={style['field']}>
        <Field
          label="Leg span of this skin, mm"
          hint={`Laid out or estimated. Emptiness weighs only on skins of more than ${LARGE_LEG_SPAN_MM} mm.`}
          error={refused ? `A length in millimeters, above 0 and up to ${LARGEST_MM}.` : undefined}
        >
          {(control) => <input {...control} inputMode="decimal" value={typed} onChange={(event) => set(event.target.value)} />}
        </Field>
      </div>
      {measuredMm !== null && measuredMm !== legSpanMm && (
        <Button onClick={() => set(String(measuredMm))}>Take {measuredMm} mm from the Bench</Button>
      )}
    </div>
  );
}

function lengthFrom(text: string): number | null {
  const length = decimalFrom(text);
  return length > 0 && length <= LARGEST_MM ? length : null;
}
