import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { WatchedAnimal } from '../../../api/contract/watch.ts';
import type { AdultFemale } from '../../../domain/care/pairing.ts';
import { dayInWords, daysInWords, spanInWords } from '../../../words/dates.ts';
import { useAnswer } from '../../client/queries.ts';
import { FailureNotice } from '../../parts/Notice.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import style from './PairingTables.module.css';

const WHY_UNCONFIRMED = {
  'web-noted': 'a web was noted, no sex is firm',
  contradicted: 'signs contradict each other',
} as const;

interface Row {
  readonly specimenId: string;
  readonly cells: readonly [string, string];
}

/** Who could be paired, side by side and matched with nobody. */
export function PairingTables({ animals }: { animals: readonly WatchedAnimal[] }): ReactElement | null {
  const pairing = useAnswer('GET /api/watch/pairing', {});
  if (pairing.error) return <FailureNotice error={pairing.error} />;
  if (!pairing.data) return null;
  const males = pairing.data.males.map(({ specimenId, ultimateMoltOn, daysSinceUltimateMolt, spermWebsOn }): Row => {
    return { specimenId, cells: [since(ultimateMoltOn, daysSinceUltimateMolt), spermWebsOn.map(dayInWords).join(', ') || 'none noted'] };
  });
  const females = pairing.data.females.map(({ specimenId, lastMoltOn, daysSinceLastMolt, forecast }): Row => {
    return {
      specimenId,
      cells: [since(lastMoltOn, daysSinceLastMolt), expectedInWords(forecast)],
    };
  });
  const unconfirmed = pairing.data.unconfirmed.map(({ specimenId, why, spermWebsOn }): Row => {
    return { specimenId, cells: [WHY_UNCONFIRMED[why], spermWebsOn.map(dayInWords).join(', ') || 'none noted'] };
  });
  return (
    <section aria-labelledby="watch-pairing" className={style['pairing']}>
      <h2 id="watch-pairing">Pairing</h2>
      <div className={style['tables']}>
        <Table caption="Mature males" heads={['Ultimate molt', 'Sperm webs']} rows={males} animals={animals} />
        <Table caption="Grown females" heads={['Last molt', 'Next molt expected']} rows={females} animals={animals} />
        <Table caption="Not confirmed" heads={['What is open', 'Sperm webs']} rows={unconfirmed} animals={animals} />
      </div>
      <p className={style['note']}>
        A molt throws away the sperm a female has stored. Animals stand here once bulbs, an egg sac or "mature" is on record. A sperm web
        that was merely noted confirms a male that skins already tell: molting mats are mistaken for one.
      </p>
    </section>
  );
}

interface TableProps {
  caption: string;
  heads: readonly [string, string];
  rows: readonly Row[];
  animals: readonly WatchedAnimal[];
}

function Table({ caption, heads, rows, animals }: TableProps): ReactElement | null {
  if (rows.length === 0) return null;
  return (
    <table>
      <caption>{caption}</caption>
      <thead>
        <tr>
          {['Animal', ...heads].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ specimenId, cells }) => {
          const specimen = animals.find((animal) => animal.specimen.id === specimenId)?.specimen;
          return (
            <tr key={specimenId}>
              <td>
                <Link to={`/specimens/${specimenId}`}>{[specimen?.code, specimen?.name].filter(Boolean).join(' ')}</Link>
                {specimen && (
                  <span className={style['taxon']}>
                    <Taxon name={specimen.taxon} />
                  </span>
                )}
              </td>
              <td>{cells[0]}</td>
              <td>{cells[1]}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function expectedInWords(forecast: AdultFemale['forecast']): string {
  if (!forecast) return 'no forecast';
  const days = forecast.told ? spanInWords(forecast.from, forecast.to) : 'overdue, no day can be told';
  return forecast.assumed ? `${days}, mostly assumed` : days;
}

function since(day: string | null, days: number | null): string {
  return day === null || days === null ? 'not on record' : `${dayInWords(day)}, ${daysInWords(days)} ago`;
}
