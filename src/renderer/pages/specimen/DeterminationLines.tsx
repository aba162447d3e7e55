import type { ReactElement } from 'react';
import type { Determination } from '../../../domain/sexing/determination.ts';
import { DayText } from '../../parts/DayText.tsx';
import { SexMark } from '../../parts/SexMark.tsx';
import style from './DeterminationLines.module.css';

/** What was concluded from one skin, by whom and when; withdrawn conclusions stay, crossed out, with their reason. */
export function DeterminationLines({ determinations }: { determinations: readonly Determination[] }): ReactElement | null {
  if (determinations.length === 0) return null;
  return (
    <ul className={style['lines']}>
      {determinations.map((determination) => (
        <li key={determination.id}>
          <span className={determination.withdrawn ? style['withdrawn'] : undefined}>
            <SexMark sign={{ sex: determination.sex, level: determination.level, conflict: false }} />
          </span>
          <span className={style['by']}>
            {determination.reader}, <DayText day={determination.readOn} />
            {determination.withdrawn && `. Withdrawn: ${determination.withdrawn.reason}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
