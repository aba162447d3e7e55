import type { ReactElement } from 'react';
import type { Level } from '../../../../domain/sexing/determination.ts';
import { LEVELS, rankOf } from '../../../../domain/sexing/rank.ts';
import { LEVEL_LABELS } from '../../../../words/labels.ts';
import style from './LevelLadder.module.css';

/** Four rungs, filled as high as the answers reach; the same in words. */
export function LevelLadder({ sex, highest }: { sex: string; highest: Level | null }): ReactElement {
  return (
    <span className={style['ladder']}>
      <span className={style['sex']}>{sex}</span>
      <span className={style['rungs']} aria-hidden="true">
        {LEVELS.map((level) => (
          <span key={level} className={highest !== null && rankOf(level) <= rankOf(highest) ? style['reached'] : style['rung']} />
        ))}
      </span>
      <span className={highest === null ? style['none'] : style['level']}>
        {highest === null ? 'nothing yet' : `up to ${LEVEL_LABELS[highest]}`}
      </span>
    </span>
  );
}
