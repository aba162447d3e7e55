import type { ReactElement } from 'react';
import { Link } from 'wouter';
import { useIntakeRun } from './IntakeProvider.tsx';
import style from './IntakeSign.module.css';

/** In the other rooms: that photos are coming in meanwhile, how far they are, and the way to them. */
export function IntakeSign(): ReactElement | null {
  const run = useIntakeRun();
  if (!run.busy) return null;
  const { done, total } = run.sending ? { done: run.sending.sent, total: run.sending.total } : (run.task ?? { done: 0, total: 0 });
  return (
    <Link to="/intake" className={style['sign']}>
      {total > 0 ? `Photos coming in: ${done} of ${total}` : 'Photos coming in'}
    </Link>
  );
}
