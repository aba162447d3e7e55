import type { ReactElement } from 'react';
import style from './ProgressBar.module.css';

/** `total` 0 means that it can't be told yet. */
export function ProgressBar({ label, done, total }: { label: string; done: number; total: number }): ReactElement {
  return total > 0 ? (
    <progress className={style['bar']} aria-label={label} value={done} max={total} />
  ) : (
    <progress className={style['bar']} aria-label={label} />
  );
}
