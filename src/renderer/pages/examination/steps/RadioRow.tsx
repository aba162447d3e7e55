import { type ReactElement, type ReactNode, useId } from 'react';
import style from './RadioRow.module.css';

interface Props<Value extends string> {
  legend: string;
  explained?: ReactNode;
  value: Value | null;
  options: readonly { value: Value; label: string; disabled?: boolean }[];
  onChange: (value: Value) => void;
  /** Why nothing can be answered here; the options are then closed. */
  closed?: string | undefined;
  error?: string | undefined;
  /** The question stands beside its answers, where it is only a word. */
  beside?: boolean;
}

/** One question and its few answers in a row. Arrow keys move between the answers, Tab to the next question. */
export function RadioRow<Value extends string>({
  legend,
  explained,
  value,
  options,
  onChange,
  closed,
  error,
  beside = false,
}: Props<Value>): ReactElement {
  const id = useId();
  const described = [explained || closed ? `${id}-more` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return (
    <fieldset
      className={[style['question'], beside ? style['beside'] : ''].filter(Boolean).join(' ')}
      disabled={closed !== undefined}
      aria-describedby={described || undefined}
    >
      <legend className={style['legend']}>{legend}</legend>
      {(explained || closed) && (
        <div id={`${id}-more`} className={style['explained']}>
          {closed ?? explained}
        </div>
      )}
      <div className={style['options']}>
        {options.map((option) => (
          <label key={option.value} className={style['option']}>
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={value === option.value}
              disabled={option.disabled}
              onChange={() => onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {error && (
        <div id={`${id}-error`} className={style['error']}>
          {error}
        </div>
      )}
    </fieldset>
  );
}
