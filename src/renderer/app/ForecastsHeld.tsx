import type { ReactElement } from 'react';
import { coverageInWords } from '../../words/forecast.ts';
import { useAnswer } from '../client/queries.ts';
import { FailureNotice } from '../parts/Notice.tsx';
import style from './SettingsDialog.module.css';

/** How well past forecasts held. */
export function ForecastsHeld(): ReactElement {
  const scores = useAnswer('GET /api/forecasts/scores', {});
  return (
    <section className={style['about']}>
      <h3>How forecasts held</h3>
      {scores.error && <FailureNotice error={scores.error} />}
      {scores.data && coverageInWords(scores.data.coverage).map((line) => <p key={line}>{line}</p>)}
    </section>
  );
}
