import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { MoltEntry } from '../../../api/contract/specimens.ts';
import { standingOf } from '../../../domain/sexing/standing.ts';
import { dayInWords, spanInWords } from '../../../words/dates.ts';
import { sexInWords } from '../../../words/sex.ts';
import { Notice } from '../../parts/Notice.tsx';

/** Says that the readings of this animal contradict each other, and names each of them. */
export function SexConflict({ molts }: { molts: readonly MoltEntry[] }): ReactElement {
  const standing = molts.flatMap(({ molt, determinations }) =>
    standingOf(determinations)
      .filter(({ sex }) => sex === 'female' || sex === 'male')
      .map((determination) => ({ determination, molt })),
  );
  return (
    <Notice tone="warning" title="The record of this animal contradicts itself.">
      <p>It counts as unsexed until a reading is corrected or withdrawn. Nothing is averaged; the next skin can decide.</p>
      <ul>
        {standing.map(({ determination: { id, exuviaId, sex, level, reader, readOn }, molt }) => (
          <li key={id}>
            <Link to={`/examination/${exuviaId}`}>
              {sexInWords({ sex, level, conflict: false })}, from the skin shed {spanInWords(molt.happenedFrom, molt.happenedTo)}
            </Link>
            , read by {reader}, {dayInWords(readOn)}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
