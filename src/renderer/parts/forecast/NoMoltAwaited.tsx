import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { SpecimenSummary } from '../../../api/contract/specimens.ts';
import type { MaleMaturitySign } from '../../../domain/care/matureMale.ts';
import { isKept } from '../../../domain/specimen/counts.ts';
import { matureMaleInWords, moltWatchedInWords } from '../../../words/forecast.ts';
import style from './ForecastNote.module.css';

interface Props {
  summary: Pick<SpecimenSummary, 'specimen' | 'matureMaleBy' | 'maleContradicted' | 'moltWatched'>;
}

/** Stands where a forecast would, of a mature male, of one that may be one, and while a watched molt is not on record; nothing for every other animal. */
export function NoMoltAwaited({ summary: { specimen, matureMaleBy, maleContradicted, moltWatched } }: Props): ReactElement | null {
  if (!isKept(specimen.status)) return null;
  if (matureMaleBy) return <MatureMale knownBy={matureMaleBy} />;
  if (maleContradicted) {
    return (
      <section className={style['forecast']} aria-label="Forecast">
        <p className={style['headline']}>
          No next molt is foretold: palpal bulbs are on record, and something else says that it is no male.
        </p>
        <p>A mature male seldom molts again, any other animal does. Until one side is taken back, watch it as one that may still molt.</p>
      </section>
    );
  }
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
