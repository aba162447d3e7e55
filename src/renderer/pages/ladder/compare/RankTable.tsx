import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { AlignedAnimal } from '../../../../domain/growth/compare/aligned.ts';
import { instarsIn, latestSharedInstar, ranksAt } from '../../../../domain/growth/compare/group.ts';
import { counted } from '../../../../words/counts.ts';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import { Select } from '../../../parts/Select.tsx';
import style from './Compare.module.css';

interface Props {
  /** Aligned by instar. */
  animals: readonly AlignedAnimal[];
  ownId: string;
  instar: number | null;
  onInstar: (instar: number) => void;
}

/** The animals in the order of their size in one and the same instar, and how far each is from the mean of all. */
export function RankTable({ animals, ownId, instar, onInstar }: Props): ReactElement {
  const instars = instarsIn(animals);
  const chosen = instar !== null && instars.includes(instar) ? instar : latestSharedInstar(animals, ownId);
  if (chosen === null) {
    return (
      <p className={style['small']}>None of these animals has a measured skin whose instar is known, so there is no order among them.</p>
    );
  }
  const ranks = ranksAt(animals, chosen);
  return (
    <>
      <div className={style['choices']}>
        <Select
          label="In order of size in"
          value={String(chosen)}
          options={instars.map((value) => ({ value: String(value), label: `Instar ${value}` }))}
          onChange={(value) => onInstar(Number(value))}
        />
      </div>
      <table className={style['ranks']}>
        <caption>
          {counted(ranks.length, 'animal')} measured in instar {chosen}, the largest first
        </caption>
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Animal</th>
            <th scope="col">Carapace length</th>
            <th scope="col">From the mean of all</th>
          </tr>
        </thead>
        <tbody>
          {ranks.map(({ specimenId, called, rankFrom, rankTo, size, fromMeanPercent }) => (
            <tr key={specimenId} className={specimenId === ownId ? style['ours'] : undefined}>
              <td className="figures">
                {rankFrom === rankTo ? rankFrom : `${rankFrom} to ${rankTo}`} of {ranks.length}
              </td>
              <th scope="row">{specimenId === ownId ? called : <Link to={`/ladder/${specimenId}`}>{called}</Link>}</th>
              <td>
                <EstimateText estimate={size} />
              </td>
              <td className="figures">
                {fromMeanPercent < 0 ? '−' : '+'}
                {Math.abs(fromMeanPercent).toFixed(1)} %
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {ranks.some(({ rankFrom, rankTo }) => rankFrom !== rankTo) && (
        <p className={style['small']}>
          Several places for one animal: its size and others differ by less than their ± taken together, so which is larger cannot be told.
        </p>
      )}
    </>
  );
}
