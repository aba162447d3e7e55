import type { ReactElement } from 'react';
import type { MaleMaturitySign } from '../../../domain/care/matureMale.ts';
import { matureMaleInWords } from '../../../words/forecast.ts';
import style from './ForecastNote.module.css';

/** Stands where a forecast would, of a mature male. */
export function NoMoltAwaited({ knownBy }: { knownBy: MaleMaturitySign }): ReactElement {
  return (
    <section className={style['forecast']} aria-label="Forecast">
      <p className={style['headline']}>{matureMaleInWords(knownBy)}</p>
      <p>A skin he should leave all the same is measured and kept like any other.</p>
    </section>
  );
}
