import type { ReactElement } from 'react';
import { type AlignedAnimal, type Alignment, dayAt } from '../../../../domain/growth/compare/aligned.ts';
import type { GroupBand } from '../../../../domain/growth/compare/group.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { rungName } from '../../../../words/ladder.ts';
import { DayText } from '../../../parts/DayText.tsx';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import style from './Compare.module.css';

interface Props {
  animals: readonly AlignedAnimal[];
  band: readonly GroupBand[];
  alignment: Alignment;
}

const PLACES: Readonly<Record<Alignment, (at: number) => string>> = {
  instar: (at) => `instar ${at}`,
  date: (at) => dayInWords(dayAt(at)),
  'since-molt': (at) => `day ${Math.round(at)}`,
};

/** All that the chart shows, to read: each skin, and where one more animal would lie. */
export function SizeTable({ animals, band, alignment }: Props): ReactElement {
  const place = PLACES[alignment];
  return (
    <details className={style['figures']}>
      <summary>The same figures as a table</summary>
      <table className={style['ranks']}>
        <caption>Every skin in the chart</caption>
        <thead>
          <tr>
            <th scope="col">Animal</th>
            <th scope="col">Skin of</th>
            <th scope="col">Shed</th>
            {alignment === 'since-molt' && <th scope="col">Day</th>}
            <th scope="col">Carapace length</th>
          </tr>
        </thead>
        <tbody>
          {animals.flatMap(({ specimenId, called, sizes }) =>
            sizes.map(({ rung, at, size }) => (
              <tr key={`${specimenId} ${rung.moltId}`}>
                <th scope="row">{called}</th>
                <td>{rungName(rung)}</td>
                <td>
                  <DayText day={rung.happenedFrom} to={rung.happenedTo} />
                </td>
                {alignment === 'since-molt' && <td className="figures">{Math.round(at)}</td>}
                <td>
                  <EstimateText estimate={size} />
                </td>
              </tr>
            )),
          )}
        </tbody>
      </table>
      {band.length > 0 && (
        <table className={style['ranks']}>
          <caption>Where one more animal of this group would lie, nine times in ten</caption>
          <thead>
            <tr>
              <th scope="col">{alignment === 'instar' ? 'At' : 'From and to'}</th>
              <th scope="col">Carapace length</th>
              <th scope="col">Animals</th>
            </tr>
          </thead>
          <tbody>
            {band.map(({ from, to, lowMm, highMm, animals: count }) => (
              <tr key={from}>
                <th scope="row">{from === to ? place(from) : `${place(from)} to ${place(to)}`}</th>
                <td className="figures">
                  {lowMm.toFixed(1)} to {highMm.toFixed(1)} mm
                </td>
                <td className="figures">{count}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}
