import type { ReactElement } from 'react';
import { dayHere, dayInWords } from '../../../../words/dates.ts';
import { useAnswer } from '../../../client/queries.ts';
import { FailureNotice } from '../../../parts/Notice.tsx';

/** Who changed a profile, when and why. */
export function GenusEdits({ genus }: { genus: string }): ReactElement {
  const { data, error } = useAnswer('GET /api/genera/{genus}', { path: { genus } });
  return (
    <>
      {error && <FailureNotice error={error} />}
      {data && (
        <ol>
          {data.edits.map(({ version, at, by, note, profile }) => (
            <li key={version}>
              {dayInWords(dayHere(at))}, {by}: {note}
              {profile === null && ' (back to the shipped profile)'}
            </li>
          ))}
        </ol>
      )}
    </>
  );
}
