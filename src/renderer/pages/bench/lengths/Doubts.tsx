import { type ReactElement, useMemo } from 'react';
import { measure } from '../../../../domain/measuring/measure.ts';
import { doubtsAbout } from '../../../../domain/measuring/plausibility.ts';
import { doubtInWords } from '../../../../words/measuring.ts';
import { landmarksOf, readingDraftOf } from '../../../bench/document.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { useCalibration, useSettledDocument, useWork } from '../useWork.ts';
import style from './LengthsPanel.module.css';

/** What cannot quite be believed of this pass. Said once nothing is in hand; nothing waits for it to be put right. */
export function Doubts(): ReactElement | null {
  const { sheet, pass } = useWork();
  const document = useSettledDocument();
  const calibration = useCalibration(document);
  const doubts = useMemo(() => {
    // Not with the uncertainty from repeats: the misplaced point that is looked for here has widened that too.
    const measurement = calibration?.ok ? measure(readingDraftOf(document, pass), calibration.value) : null;
    return doubtsAbout(landmarksOf(document), measurement, sheet.photo.view === 'ventral' ? 'below' : 'above');
  }, [document, pass, sheet, calibration]);
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
