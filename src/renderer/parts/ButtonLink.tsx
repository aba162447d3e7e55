import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';
import { type ButtonKind, buttonClass } from './Button.tsx';
import { Icon, type IconName } from './Icon.tsx';

/** Goes to another room, and looks like a step to take. */
export function ButtonLink({
  to,
  kind = 'plain',
  icon,
  children,
}: {
  to: string;
  kind?: ButtonKind;
  icon?: IconName;
  children: ReactNode;
}): ReactElement {
  return (
    <Link to={to} className={buttonClass(kind)}>
      {icon && <Icon name={icon} sizePx={18} />}
      {children}
    </Link>
  );
}
