import type { ReactElement, ReactNode } from 'react';
import style from './WholeRow.module.css';

/** Something in a form that takes the whole width. */
export function WholeRow({ children }: { children: ReactNode }): ReactElement {
  return <div className={style['row']}>{children}</div>;
}
