import { type ReactElement, type ReactNode, useId } from 'react';
import { bringIntoView } from './bringIntoView.ts';
import style from './Field.module.css';

/** What the control inside a field must carry, so that label, hint and error belong to it. */
export interface FieldControl {
  id: string;
  'aria-describedby': string | undefined;
  'aria-invalid': true | undefined;
}

interface Props {
  label: string;
  hint?: ReactNode;
  error?: string | undefined;
  showsErrorInView?: boolean;
  children: (control: FieldControl) => ReactNode;
}

/** A labeled control: `<Field label="Code">{(control) => <input {...control} />}</Field>`. */
export function Field({ label, hint, error, showsErrorInView = false, children }: Props): ReactElement {
  const id = useId();
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return (
    <div className={style['field']}>
      <label className={style['label']} htmlFor={id}>
        {label}
      </label>
      {children({ id, 'aria-describedby': described || undefined, 'aria-invalid': error ? true : undefined })}
      {hint && (
        <div id={`${id}-hint`} className={style['hint']}>
          {hint}
        </div>
      )}
      {error && (
        <div id={`${id}-error`} className={style['error']} ref={showsErrorInView ? bringIntoView : undefined}>
          {error}
        </div>
      )}
    </div>
  );
}
