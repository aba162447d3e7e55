import { Fragment, type ReactElement } from 'react';
import type { MoltEntry, SpecimenSummary } from '../../../api/contract/specimens.ts';
import { instarInWords, missingInWords } from '../../../words/instars.ts';
import { DayText } from '../../parts/DayText.tsx';
import style from './LifeLine.module.css';
import { LifeLineMolt } from './LifeLineMolt.tsx';
import { lifeLineOf } from './lifeLine.ts';

interface Props {
  summary: SpecimenSummary;
  /** Oldest first. */
  molts: readonly MoltEntry[];
  today: string;
}

/** The molts of one animal along a line, newest first; above them the instar it lives in now, which has no skin yet. */
export function LifeLine({ summary, molts, today }: Props): ReactElement {
  const living = summary.specimen.status !== 'dead';
  return (
    <ol className={style['line']} reversed>
      {living && (
        <li className={`${style['stop']} ${style['now']}`}>
          <h3>{summary.instarNow === null ? 'The instar it lives in now' : `Now in ${instarInWords(summary.instarNow)}`}</h3>
          <Since summary={summary} />
        </li>
      )}
      {lifeLineOf(molts).map((stop) => (
        <Fragment key={stop.entry.molt.id}>
          <li className={style['stop']}>
            <LifeLineMolt stop={stop} today={today} />
          </li>
          {stop.missing.length > 0 && <li className={`${style['stop']} ${style['gap']}`}>{missingInWords(stop.missing)}</li>}
        </Fragment>
      ))}
    </ol>
  );
}

/** The molt it has lived since, also one that is only watched so far. */
function Since({ summary: { lastMolt, moltWatched } }: { summary: SpecimenSummary }): ReactElement | null {
  const isWatched = moltWatched?.state === 'not-recorded';
  const since = isWatched ? { from: moltWatched.on, to: moltWatched.on } : lastMolt;
  if (!since) return null;
  return (
    <p>
      Since <DayText day={since.from} to={since.to} />
      {isWatched && ', a molt that is not on record yet'}. Its size shows only when this instar's skin is shed.
    </p>
  );
}
