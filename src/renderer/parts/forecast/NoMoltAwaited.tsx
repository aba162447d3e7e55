import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { SpecimenSummary } from '../../../api/contract/specimens.ts';
import type { MaleMaturitySign } from '../../../domain/care/matureMale.ts';
import { isKept } from '../../../domain/specimen/counts.ts';
import { matureMaleInWords, moltWatchedInWords } from '../../../words/forecast.ts';
import style from './ForecastNote.module.css';

interface Props {
  summary: Pick<SpecimenSummary, 'specimen' | 'matureMaleBy' | 'moltWatched'>;
}

/** Stands where a forecast would, of a mature male and while a watched molt is not on record; nothing for every other animal. */
export function NoMoltAwaited({ summary: { specimen, matureMaleBy, moltWatched } }: Props): ReactElement | null {
  if (!isKept(specimen.status)) return null;
  if (matureMaleBy) return <MatureMale knownBy={matureMaleBy} />;
  if (!moltWatched) return null;
  return (
    <section className={style['forecast']} aria-label="Forecast">
      <p className={style['headline']}>{moltWatchedInWords(moltWatched)}</p>
      <p>
        The next one is foretold once this one is on record: <Link to={`/watch/${specimen.id}`}>to Watch</Link>.
      </p>
    </section>
  );
}

function MatureMale({ knownBy }: { knownBy: MaleMaturitySign }): ReactElement {
  return (
    <section className={style['forecast']} aria-label="Forecast">
      <p className={style['headline']}>{matureMaleInWords(knownBy)}</p>
      <p>A skin he should leave all the same is measured and kept like any other.</p>
    </section>
  );
}
