import type { ReactElement } from 'react';
import { takeUp } from '../../../bench/deeds/travel.ts';
import { Button } from '../../../parts/Button.tsx';
import style from '../panel.module.css';
import { focusTask } from '../tasks.ts';
import { useWork } from '../useWork.ts';

/** That a pass needs no end: what is placed counts, and whoever has enough goes on to the lengths. */
export function Enough(): ReactElement {
  const { bench } = useWork();
  const read = () => {
    takeUp(bench, 'lengths');
    focusTask('lengths');
  };
  return (
    <>
      <p className={style['soft']}>Each point counts as soon as it is placed; the others may stay open. Stop whenever you have enough.</p>
      <div className={style['row']}>
        <Button onClick={read}>Enough points: read the lengths</Button>
      </div>
    </>
  );
}
