import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { WatchedAnimal } from '../../../api/contract/watch.ts';
import { dayInWords, daysInWords, spanInWords } from '../../../words/dates.ts';
import { useAnswer } from '../../client/queries.ts';
import { FailureNotice } from '../../parts/Notice.tsx';
import style from './PairingTables.module.css';

/** Who could be paired, side by side and matched with nobody. */
export function PairingTables({ animals }: { animals: readonly WatchedAnimal[] }): ReactElement | null {
  const pairing = useAnswer('GET /api/watch/pairing', {});
  if (pairing.error) return <FailureNotice error={pairing.error} />;
  if (!pairing.data || pairing.data.males.length + pairing.data.females.length === 0) return null;
  const { males, females } = pairing.data;
  const named = (id: string) => {
    const specimen = animals.find((animal) => animal.specimen.id === id)?.specimen;
    return <Link to={`/specimens/${id}`}>{[specimen?.code, specimen?.name].filter(Boolean).join(' ')}</Link>;
  };
  return (
    <section aria-labelledby="watch-pairing" className={style['pairing']}>
      <h2 id="watch-pairing">Pairing</h2>
      <div className={style['tables']}>
        <table>
          <caption>Mature males</caption>
          <thead>
            <tr>
              <th scope="col">Animal</th>
              <th scope="col">Ultimate molt</th>
              <th scope="col">Sperm webs</th>
            </tr>
          </thead>
          <tbody>
            {males.map(({ specimenId, ultimateMoltOn, daysSinceUltimateMolt, spermWebsOn }) => (
              <tr key={specimenId}>
                <td>{named(specimenId)}</td>
                <td>{ultimateMoltOn && daysSinceUltimateMolt !== null ? since(ultimateMoltOn, daysSinceUltimateMolt) : 'not on record'}</td>
                <td>{spermWebsOn.map(dayInWords).join(', ') || 'none noted'}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <table>
          <caption>Grown females</caption>
          <thead>
            <tr>
              <th scope="col">Animal</th>
              <th scope="col">Last molt</th>
              <th scope="col">Next expected</th>
            </tr>
          </thead>
          <tbody>
            {females.map(({ specimenId, lastMoltOn, daysSinceLastMolt, forecast }) => (
              <tr key={specimenId}>
                <td>{named(specimenId)}</td>
                <td>{lastMoltOn && daysSinceLastMolt !== null ? since(lastMoltOn, daysSinceLastMolt) : 'not on record'}</td>
                <td>{forecast ? spanInWords(forecast.from, forecast.to) : 'no forecast'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className={style['note']}>
        A molt throws away the sperm a female has stored. Animals stand here once a sperm web, an egg sac or "mature" is noted.
      </p>
    </section>
  );
}

function since(day: string, days: number): string {
  return `${dayInWords(day)}, ${daysInWords(days)} ago`;
}
