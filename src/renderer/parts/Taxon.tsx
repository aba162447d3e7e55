import type { ReactElement } from 'react';
import style from './Taxon.module.css';

/** A scientific name: always in italics and in the serif; says so when it is unknown. */
export function Taxon({ name }: { name: string }): ReactElement {
  if (name.trim() === '') return <span className={style['unknown']}>species unknown</span>;
  return <i className={style['taxon']}>{name}</i>;
}
