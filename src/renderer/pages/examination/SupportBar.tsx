import type { ReactElement } from 'react';
import type { Assessment } from '../../../domain/sexing/levels.ts';
import { LevelLadder } from './LevelLadder.tsx';
import style from './SupportBar.module.css';

/** How far the answers reach so far, always in sight while they are given. */
export function SupportBar({ female, male }: { female: Assessment; male: Assessment }): ReactElement {
  return (
    <output className={style['bar']} aria-label="What the answers support">
      <LevelLadder sex="Female" highest={female.highest} />
      <LevelLadder sex="Male" highest={male.highest} />
    </output>
  );
}
