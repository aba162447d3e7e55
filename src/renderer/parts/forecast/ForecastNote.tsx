import type { ReactElement, ReactNode } from 'react';
import type { GrowthForecast } from '../../../domain/growth/forecast/forecast.ts';
import type { Instar } from '../../../domain/molting/instar.ts';
import { forecastInWords } from '../../../words/forecast.ts';
import { Assumptions } from './Assumptions.tsx';
import style from './ForecastNote.module.css';

/** When the next molt is due and how large the animal will be, with why. */
export function ForecastNote({
  forecast,
  now,
  actions,
}: {
  forecast: GrowthForecast;
  now: Instar | null;
  actions?: ReactNode;
}): ReactElement {
  const words = forecastInWords(forecast, now);
  return (
    <section className={style['forecast']} aria-label="Forecast">
      <p className={style['headline']}>{words.headline}</p>
      {words.closer && <p>{words.closer}</p>}
      {words.skin && <p>{words.skin}</p>}
      <details>
        <summary>What it rests on</summary>
        <p>{words.why}</p>
        {words.missing.length > 0 && (
          <ul>
            {words.missing.map((fact) => (
              <li key={fact}>{fact}</li>
            ))}
          </ul>
        )}
        <Assumptions />
        {actions}
      </details>
    </section>
  );
}
