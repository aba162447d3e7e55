import { type ReactElement, type ReactNode, useId } from 'react';
import style from './Group.module.css';

/** One part of the examination under its heading. */
export function Group({ title, note, children }: { title: string; note?: ReactNode; children: ReactNode }): ReactElement {
  const id = useId();
  return (
    <section aria-labelledby={id} className={style['group']}>
      <h2 id={id} className={style['title']}>
        {title}
      </h2>
      {note && <p className={style['note']}>{note}</p>}
      {children}
    </section>
  );
}
