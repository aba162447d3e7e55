import type { ReactElement, ReactNode } from 'react';
import style from './CheckField.module.css';

/** Yes or no, with its words beside the box. */
export function CheckField(props: { checked: boolean; onChange: (checked: boolean) => void; children: ReactNode }): ReactElement {
  return (
    <label className={style['check']}>
      <input type="checkbox" checked={props.checked} onChange={(event) => props.onChange(event.target.checked)} />
      <span>{props.children}</span>
    </label>
  );
}
