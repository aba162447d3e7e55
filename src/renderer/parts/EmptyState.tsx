import type { ReactElement, ReactNode } from 'react';
import style from './EmptyState.module.css';

/** Says what belongs here and offers the first step. */
export function EmptyState({ title, children, action }: { title: string; children: ReactNode; action?: ReactNode }): ReactElement {
  return (
    <section className={style['empty']}>
      <h2>{title}</h2>
      <div className={style['words']}>{children}</div>
      {action && <div className={style['action']}>{action}</div>}
    </section>
  );
}
