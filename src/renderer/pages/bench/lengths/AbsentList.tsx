import type { ReactElement } from 'react';
import type { AbsentQuantity } from '../../../../domain/measuring/quantity.ts';
import { absentInWords, quantityName } from '../../../../words/quantities.ts';
import style from './LengthsPanel.module.css';

interface Props {
  absent: readonly AbsentQuantity[];
  /** With what is not shown. */
  all: readonly AbsentQuantity[];
  own: string | null;
}

/** What could not be measured, and why: a missing part is not a length of zero. */
export function AbsentList({ absent, all, own }: Props): ReactElement | null {
  if (absent.length === 0) return null;
  return (
    <details className={style['absent']}>
      <summary>{absent.length} without a value</summary>
      <dl>
        {absent.map((one) => (
          <div key={one.name}>
            <dt>{quantityName(one.name, own)}</dt>
            <dd>{absentInWords(one, all)}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
