import type { ButtonHTMLAttributes, ReactElement } from 'react';
import { Icon, type IconName } from './Icon.tsx';
import style from './IconButton.module.css';

type Props = Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'children' | 'aria-label'> & {
  icon: IconName;
  /** Says what it does, to everybody: spoken name and tooltip. */
  label: string;
};

export function IconButton({ icon, label, className, ...rest }: Props): ReactElement {
  return (
    <button type="button" title={label} {...rest} aria-label={label} className={[style['button'], className].filter(Boolean).join(' ')}>
      <Icon name={icon} />
    </button>
  );
}
