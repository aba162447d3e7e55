import type { ReactElement } from 'react';
import type { AbsentQuantity } from '../../../../domain/measuring/quantity.ts';
import { ABSENT_LABELS, quantityName } from '../../../../words/quantities.ts';
import style from './LengthsPanel.module.css';

/** What could not be measured, and why: a missing part is not a length of zero. */
export function AbsentList({ absent, own }: { absent: readonly AbsentQuantity[]; own: string | null }): ReactElement | null {
  if (absent.length === 0) return null;
  return (
    <details className={style['absent']}>
      <summary>{absent.length} without a value</summary>
      <dl>
        {absent.map(({ name, reason }) => (
          <div key={name}>
            <dt>{quantityName(name, own)}</dt>
            <dd>{ABSENT_LABELS[reason]}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
