import type { ReactElement, ReactNode } from 'react';
import style from './PageHead.module.css';
import { useWindowTitle } from './useWindowTitle.ts';

interface Props {
  title: ReactNode;
  /** The same title as plain words, for the window; needed where `title` is more than text. */
  windowTitle?: string;
  /** A line above the title: where this belongs. */
  above?: ReactNode;
  /** A line below the title. */
  below?: ReactNode;
  actions?: ReactNode;
}

/** The head of a page: its title, what it belongs to, and what can be done. */
export function PageHead({ title, windowTitle, above, below, actions }: Props): ReactElement {
  useWindowTitle(windowTitle ?? (typeof title === 'string' ? title : ''));
  return (
    <header className={style['head']}>
      <div className={style['words']}>
        {above && <div className={style['above']}>{above}</div>}
        <h1 className={style['title']}>{title}</h1>
        {below && <div className={style['below']}>{below}</div>}
      </div>
      {actions && <div className={style['actions']}>{actions}</div>}
    </header>
  );
}
