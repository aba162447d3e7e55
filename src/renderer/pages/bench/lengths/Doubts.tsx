import { type ReactElement, useMemo } from 'react';
import { measure } from '../../../../domain/measuring/measure.ts';
import { doubtsAbout, type PlausibilityWarning } from '../../../../domain/measuring/plausibility.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { doubtInWords } from '../../../../words/doubts.ts';
import { landmarksOf, readingDraftOf } from '../../../bench/document.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { MirroredPicture } from '../MirroredPicture.tsx';
import { useCalibration, useSettledDocument, useWork } from '../useWork.ts';
import style from './LengthsPanel.module.css';

/** What is told while points are still being placed: sides exchanged, or a point far from where it can be. */
export const DOUBTS_OF_PLACES: readonly PlausibilityWarning['code'][] = ['carapace-sides-crossed', 'legs-on-other-side', 'leg-proportion'];

/**
 * What cannot quite be believed of this pass. Said once nothing is in hand; nothing waits for it to be put right.
 *
 * @param only the kinds to be told; all of them where not given.
 */
export function Doubts({ only }: { only?: readonly PlausibilityWarning['code'][] }): ReactElement {
  const { sheet, pass } = useWork();
  const document = useSettledDocument();
  const calibration = useCalibration(document);
  const doubts = useMemo(() => {
    // Not with the uncertainty from repeats: the misplaced point that is looked for here has widened that too.
    const measurement = calibration?.ok
      ? measure(readingDraftOf(document, pass), calibration.value, { shown: shownOn(sheet.photo) })
      : null;
    const all = doubtsAbout(landmarksOf(document), measurement, sheet.photo.view === 'ventral' ? 'below' : 'above');
    return only === undefined ? all : all.filter(({ code }) => only.includes(code));
  }, [document, pass, sheet, calibration, only]);
  return (
    <>
      <MirroredPicture marks={document.scale} />
      {doubts.length > 0 && (
        <Notice tone="warning" title="Worth another look">
          <ul className={style['doubts']}>
            {doubts.map((doubt) => (
              <li key={doubtInWords(doubt)}>{doubtInWords(doubt)}</li>
            ))}
          </ul>
        </Notice>
      )}
    </>
  );
}
