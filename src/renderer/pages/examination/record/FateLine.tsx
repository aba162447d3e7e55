import type { ReactElement } from 'react';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import type { LaterFate } from '../../../../domain/sexing/later.ts';
import type { LiveSign } from '../../../../domain/sexing/live/liveSign.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { findingInWords } from '../../../../words/liveSigns.ts';
import { sexInWords } from '../../../../words/sex.ts';
import style from './FateLine.module.css';

interface Props {
  fate: LaterFate | null;
  determinations: readonly Determination[];
  liveSigns: readonly LiveSign[];
}

const HAPPENED = {
  superseded: 'Corrected by a later one:',
  contradicted: 'Contradicted later by:',
  confirmed: 'Confirmed later by:',
} as const;

/** What has become of a determination, and by what. */
export function FateLine({ fate, determinations, liveSigns }: Props): ReactElement | null {
  if (fate === null || fate.fate === 'stands' || fate.fate === 'withdrawn') return null;
  return (
    <p className={style[fate.fate]}>
      {HAPPENED[fate.fate]} {fate.by.map((id) => nameOf(id, determinations, liveSigns)).join('; ')}.
    </p>
  );
}

function nameOf(id: string, determinations: readonly Determination[], liveSigns: readonly LiveSign[]): string {
  const reading = determinations.find((one) => one.id === id);
  if (reading) {
    const { sex, level, reader, readOn } = reading;
    return `${sexInWords({ sex, level, conflict: false })}, read by ${reader}, ${dayInWords(readOn)}`;
  }
  const sign = liveSigns.find((one) => one.id === id);
  return sign ? `${findingInWords(sign.finding)}, ${dayInWords(sign.seenOn)}` : 'something no longer on record';
}
