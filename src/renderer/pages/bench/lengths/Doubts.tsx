import type { ReactElement } from 'react';
import { doubtsAbout } from '../../../../domain/measuring/plausibility.ts';
import { doubtInWords } from '../../../../words/measuring.ts';
import { landmarksOf } from '../../../bench/document.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import style from './LengthsPanel.module.css';

/** What cannot quite be believed of this pass. Said once nothing is in hand; nothing waits for it to be put right. */
export function Doubts(): ReactElement | null {
  const { photo } = useWork().sheet;
  const document = useSettledDocument();
  const { measurement } = useMeasured(document);
  const doubts = doubtsAbout(landmarksOf(document), measurement, photo.view === 'ventral' ? 'below' : 'above');
  if (doubts.length === 0) return null;
  return (
    <Notice tone="warning" title="Worth another look">
      <ul className={style['doubts']}>
        {doubts.map((doubt) => (
          <li key={doubtInWords(doubt)}>{doubtInWords(doubt)}</li>
        ))}
      </ul>
    </Notice>
  );
}
