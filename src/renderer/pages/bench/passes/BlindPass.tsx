import type { ReactElement } from 'react';
import { endPlacing } from '../../../bench/deeds/selection.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { hiddenInWords } from './passInWords.ts';
import { useEarlierHidden } from './useEarlierHidden.ts';

/** Says that a further pass is being made and why nothing is seen of the ones before. */
export function BlindPass(): ReactElement | null {
  const { bench, pass } = useWork();
  const hidden = useEarlierHidden();
  if (hidden.length === 0) return null;
  return (
    <div className={style['standing']} role="status">
      <Notice title={`This is pass ${pass.pass}.`}>
        {hiddenInWords(hidden.map((earlier) => earlier.pass))}
        <div className={style['answers']}>
          <Button onClick={() => endPlacing(bench)}>No more points: show now</Button>
        </div>
      </Notice>
    </div>
  );
}
