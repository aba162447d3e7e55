import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { OutcomeCount } from '../../../../domain/sexing/outcomes/outcomes.ts';
import { counted } from '../../../../words/counts.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { FailureNotice, Notice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import style from './OutcomesPage.module.css';

const METHODS: Readonly<Record<OutcomeCount['method'], string>> = {
  'skin-stereomicroscope': 'A skin, stereomicroscope',
  'skin-loupe': 'A skin, loupe',
  'skin-naked-eye': 'A skin, naked eye',
  'skin-unstated': 'A skin, enlargement not noted',
  animal: 'The animal alone',
};

/** How often readings came true, counted for animals that were proved later. */
export function OutcomesPage(): ReactElement {
  const answer = useAnswer('GET /api/outcomes', {});
  const log = answer.data;
  return (
    <>
      <PageHead
        title="Outcome log"
        above={<Link to="/examination">Examination</Link>}
        below="Earlier readings held against what the animal turned out to be: bulbs or an egg sac, recorded on its page."
      />
      {answer.error && <FailureNotice error={answer.error} action={<Button onClick={() => void answer.refetch()}>Ask again</Button>} />}
      {log && log.contradictoryProofs.length > 0 && (
        <Notice
          tone="warning"
          title={`${counted(log.contradictoryProofs.length, 'animal has', 'animals have')} bulbs and an egg sac on record.`}
        >
          <p>Nothing of theirs is scored until one of the two is withdrawn:</p>
          <ul>
            {log.contradictoryProofs.map((specimenId) => (
              <li key={specimenId}>
                <Link to={`/specimens/${specimenId}`}>To the animal</Link>
              </li>
            ))}
          </ul>
        </Notice>
      )}
      {log?.counts.length === 0 && (
        <EmptyState title="Nothing to count yet">
          {log.provedAnimals === 0
            ? 'No animal is proved yet. Record palpal bulbs or an egg sac on the page of an animal, and what was signed before is scored here. Animals of the sample cabinet are not counted.'
            : `${counted(log.provedAnimals, 'animal is', 'animals are')} proved, but nobody had signed a sex for them before.`}
        </EmptyState>
      )}
      {log && log.counts.length > 0 && (
        <>
          <table className={style['table']}>
            <caption className={style['caption']}>
              {counted(log.provedAnimals, 'proved animal')}. Withdrawn and corrected claims count as well: leaving them out would flatter.
            </caption>
            <thead>
              <tr>
                <th scope="col">How it was read</th>
                <th scope="col">Size class</th>
                <th scope="col">Said</th>
                <th scope="col">Came true</th>
                <th scope="col">Of all such claims, with 95 % confidence</th>
              </tr>
            </thead>
            <tbody>
              {log.counts.map((count) => (
                <tr key={`${count.method} ${count.sizeClass} ${count.sex}`}>
                  <td>{METHODS[count.method]}</td>
                  <td>{count.sizeClass ?? 'not known'}</td>
                  <td>{count.sex}</td>
                  <td>
                    {count.right} of {count.total}
                  </td>
                  <td>{intervalInWords(count)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className={style['note']}>
            Size classes of skins run from A, the smallest, to D; their limits stand among{' '}
            <Link to="/examination/numbers">the numbers of the model</Link>. They are not the grades of a strip.
          </p>
          <p className={style['note']}>
            Exact intervals (Clopper &amp; Pearson 1934). With few animals they are wide, and that is the truth: three of three right can
            still be a reader who errs in every third case.
          </p>
        </>
      )}
    </>
  );
}

function intervalInWords({ low, high }: Pick<OutcomeCount, 'low' | 'high'>): string {
  return `between ${Math.floor(100 * low)} % and ${Math.ceil(100 * high)} % right`;
}
