import type { ReactElement } from 'react';
import type { Assessment } from '../../../../domain/sexing/levels.ts';
import { LEVEL_LABELS } from '../../../../words/labels.ts';
import { NEED_WORDS } from '../../../../words/sexing.ts';
import style from './StillMissing.module.css';

/** What the next level needs, way by way. */
export function StillMissing({ assessment: { next, missing } }: { assessment: Assessment }): ReactElement | null {
  if (next === null) return null;
  return (
    <div className={style['missing']}>
      <p>
        For <em>{LEVEL_LABELS[next]}</em> it still needs{missing.length > 1 ? ' one of these' : ''}:
      </p>
      <ul className={style['ways']}>
        {missing.map((way) => (
          <li key={way.join()}>
            <ul className={style['way']}>
              {way.map((reason) => (
                <li key={reason}>{NEED_WORDS[reason]}</li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </div>
  );
}
