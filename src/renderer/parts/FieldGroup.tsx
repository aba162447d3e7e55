import { type ReactElement, type ReactNode, useId } from 'react';
import fieldStyle from './Field.module.css';
import style from './FieldGroup.module.css';

interface Props {
  label: string;
  error?: string | undefined;
  children: ReactNode;
}

/** Several controls that answer one question. */
export function FieldGroup({ label, error, children }: Props): ReactElement {
  const errorId = useId();
  return (
    <fieldset className={style['group']} aria-describedby={error ? errorId : undefined}>
      <legend>{label}</legend>
      <div className={style['choices']}>{children}</div>
      {error && (
        <div id={errorId} role="alert" className={fieldStyle['error']}>
          {error}
        </div>
      )}
    </fieldset>
  );
}
