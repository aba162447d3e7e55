import type { ReactElement } from 'react';
import type { Determination } from '../../../domain/sexing/determination.ts';
import { contradictionsOf } from '../../../domain/sexing/sign.ts';
import { correctedIds } from '../../../domain/sexing/standing.ts';
import { DayText } from '../../parts/DayText.tsx';
import { SexMark } from '../../parts/SexMark.tsx';
import style from './DeterminationLines.module.css';

/** What was concluded from one skin, by whom and when; corrected and withdrawn conclusions stay, crossed out, and say so. */
export function DeterminationLines({ determinations }: { determinations: readonly Determination[] }): ReactElement | null {
  if (determinations.length === 0) return null;
  const corrected = correctedIds(determinations);
  const contradicting = new Set(contradictionsOf(determinations, []).map(({ id }) => id));
  return (
    <ul className={style['lines']}>
      {determinations.map((determination) => (
        <li key={determination.id}>
          <span className={determination.withdrawn || corrected.has(determination.id) ? style['over'] : undefined}>
            <SexMark sign={{ sex: determination.sex, level: determination.level, conflict: contradicting.has(determination.id) }} />
          </span>
          <span className={style['by']}>
            {determination.reader}, <DayText day={determination.readOn} />
            {contradicting.has(determination.id) && '. Another reading of this skin says otherwise'}
            {corrected.has(determination.id) && '. Corrected by a later one'}
            {determination.withdrawn && `. Withdrawn: ${determination.withdrawn.reason}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
