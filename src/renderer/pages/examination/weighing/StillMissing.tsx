import type { ReactElement } from 'react';
import type { Assessment } from '../../../../domain/sexing/levels.ts';
import { listed } from '../../../../words/counts.ts';
import { LEVEL_LABELS } from '../../../../words/labels.ts';
import { NEED_WORDS } from '../../../../words/sexing.ts';
import { neededOf } from './needed.ts';
import style from './StillMissing.module.css';

/** What the next level needs in any case, and which ways lead there from then on. */
export function StillMissing({ assessment: { next, missing } }: { assessment: Assessment }): ReactElement | null {
  if (next === null) return null;
  const { always, either } = neededOf(missing);
  return (
    <div className={style['missing']}>
      <p>
        For <em>{LEVEL_LABELS[next]}</em> it still needs{always.length === 0 && either.length > 1 ? ' one of these' : ''}:
      </p>
      <ul className={style['list']}>
        {always.map((reason) => (
          <li key={reason}>{NEED_WORDS[reason]}</li>
        ))}
        {always.length === 0 && either.map((way) => <li key={way.join()}>{together(way)}</li>)}
        {always.length > 0 && either.length > 0 && (
          <li>
            and one of these:
            <ul className={style['list']}>
              {either.map((way) => (
                <li key={way.join()}>{together(way)}</li>
              ))}
            </ul>
          </li>
        )}
      </ul>
    </div>
  );
}

function together(way: Assessment['missing'][number]): string {
  return listed(way.map((reason) => NEED_WORDS[reason]));
}
