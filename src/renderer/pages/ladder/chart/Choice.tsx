import { type ReactElement, useId } from 'react';
import style from './Choice.module.css';

interface Props<Value extends string> {
  legend: string;
  value: Value;
  options: readonly { readonly value: Value; readonly label: string }[];
  onChange: (value: Value) => void;
}

/** One of a few, all in sight: a row of radio buttons that look like words. */
export function Choice<Value extends string>({ legend, value, options, onChange }: Props<Value>): ReactElement {
  const name = useId();
  return (
    <fieldset className={style['choice']}>
      <legend className={style['legend']}>{legend}</legend>
      {options.map((option) => (
        <label key={option.value} className={style['option']}>
          <input type="radio" name={name} checked={option.value === value} onChange={() => onChange(option.value)} />
          <span>{option.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
