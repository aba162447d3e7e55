import type { ReactElement, ReactNode } from 'react';
import style from './FieldGroup.module.css';

/** Several controls that answer one question. */
export function FieldGroup({ label, children }: { label: string; children: ReactNode }): ReactElement {
  return (
    <fieldset className={style['group']}>
      <legend>{label}</legend>
      <div className={style['choices']}>{children}</div>
    </fieldset>
  );
}
