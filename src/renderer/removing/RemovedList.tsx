import { type ReactElement, useState } from 'react';
import { useAnswer } from '../client/queries.ts';
import { Button } from '../parts/Button.tsx';
import { FailureNotice } from '../parts/Notice.tsx';
import style from './RemovedList.module.css';
import { useRemovals } from './RemovedProvider.tsx';
import { comesBackWith, removedThingInWords } from './removalWords.ts';

/** What can still be put back, whichever window removed it and however long ago its message went. */
export function RemovedList(): ReactElement {
  const { data: pending, error } = useAnswer('GET /api/removals', {});
  const { putBack } = useRemovals();
  const [refused, setRefused] = useState<unknown>(null);
  const attempt = (removalId: string) => {
    setRefused(null);
    putBack(removalId).catch(setRefused);
  };
  return (
    <section aria-labelledby="removed" className={style['removed']}>
      <h3 id="removed">Removed, can be put back</h3>
      {error && <FailureNotice error={error} />}
      {refused !== null && <FailureNotice error={refused} />}
      {pending?.length === 0 && <p className={style['none']}>Nothing was removed since Exuviary was started.</p>}
      <ul className={style['items']}>
        {pending?.map((removal) => {
          const name = removedThingInWords(removal.thing);
          const also = comesBackWith(removal);
          return (
            <li key={removal.id} className={style['item']}>
              <span className={style['name']}>
                {name}
                {also && <span className={style['also']}> {also}</span>}
              </span>
              <Button kind="quiet" icon="undo" aria-label={`Put back: ${name}`} onClick={() => attempt(removal.id)}>
                Put back
              </Button>
            </li>
          );
        })}
      </ul>
      {pending && pending.length > 0 && <p className={style['none']}>When Exuviary is closed, these are gone for good.</p>}
    </section>
  );
}
