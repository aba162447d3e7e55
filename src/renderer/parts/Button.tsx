import type { ButtonHTMLAttributes, ReactElement } from 'react';
import style from './Button.module.css';
import { Icon, type IconName } from './Icon.tsx';

export type ButtonKind = 'primary' | 'plain' | 'quiet' | 'danger';

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  /** `primary`: the one next step; `plain`: other steps; `quiet`: inside text and lists; `danger`: takes something away. */
  kind?: ButtonKind;
  icon?: IconName;
  /** Work is under way: the button stays focusable but answers no click. */
  busy?: boolean;
};

export function buttonClass(kind: ButtonKind): string {
  return [style['button'], style[kind]].filter(Boolean).join(' ');
}

export function Button({ kind = 'plain', icon, busy = false, className, children, onClick, ...rest }: Props): ReactElement {
  return (
    <button
      type="button"
      {...rest}
      className={[buttonClass(kind), className].filter(Boolean).join(' ')}
      aria-busy={busy || undefined}
      aria-disabled={busy || undefined}
      onClick={busy ? (event) => event.preventDefault() : onClick}
    >
      {icon && <Icon name={icon} sizePx={18} />}
      {children}
    </button>
  );
}
