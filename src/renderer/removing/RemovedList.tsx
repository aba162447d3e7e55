import type { ReactElement } from 'react';
import { Button } from '../parts/Button.tsx';
import style from './RemovedList.module.css';
import { useRemovals } from './RemovedProvider.tsx';

/** What can still be put back, though its message has long given way to others. */
export function RemovedList(): ReactElement | null {
  const { removed, putBack } = useRemovals();
  if (removed.length === 0) return null;
  return (
    <section aria-labelledby="removed" className={style['removed']}>
      <h3 id="removed">Removed since this window was opened</h3>
      <ul className={style['items']}>
        {removed.map((one) => (
          <li key={one.removalId} className={style['item']}>
            <span className={style['message']}>{one.message}</span>
            <Button kind="quiet" icon="undo" onClick={() => putBack(one)}>
              Put back
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
