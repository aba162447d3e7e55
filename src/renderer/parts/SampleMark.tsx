import type { ReactElement } from 'react';
import style from './SampleMark.module.css';

/** Beside whatever belongs to the sample cabinet: nobody may take its animals and numbers for real. */
export function SampleMark(): ReactElement {
  return <span className={style['mark']}>sample, invented</span>;
}
