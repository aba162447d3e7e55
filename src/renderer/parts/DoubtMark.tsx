import type { ReactElement } from 'react';
import style from './DoubtMark.module.css';

/** Behind a size that rests on something hard to believe. */
export function DoubtMark(): ReactElement {
  return <span className={style['doubt']}>doubted, see the Bench</span>;
}
