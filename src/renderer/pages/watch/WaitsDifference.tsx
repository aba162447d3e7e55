import type { ReactElement } from 'react';
import { CAUTIOUS_FEEDING_TABLE, type FeedingTable } from '../../../domain/care/feedingTable.ts';
import { differenceOf, type WaitDifference } from '../../../domain/care/tableDifference.ts';
import { spansInWords, waitInWords } from './holdWords.ts';
import style from './WaitsDifference.module.css';

const CHANGES: Readonly<Record<WaitDifference['change'], string>> = {
  shorter: 'shorter',
  longer: 'longer',
  'same-or-a-few-days': 'about the same',
};

/** Where the keeper's table differs from the cautious one. */
export function WaitsDifference({ own }: { own: FeedingTable }): ReactElement {
  const differences = differenceOf(CAUTIOUS_FEEDING_TABLE, own);
  return (
    <section aria-label="Difference from the cautious waits" className={style['difference']} role="status">
      {differences.length === 0 ? (
        <p>These are the cautious waits.</p>
      ) : (
        <>
          <h3>Against the cautious waits</h3>
          <ul className={style['list']}>
            {differences.map((one) => (
              <li key={`${one.fromMm} ${one.fromIncluded}`}>
                {spansInWords(one)}: {waitInWords(one.after)} instead of {waitInWords(one.before)} <strong>({CHANGES[one.change]})</strong>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
