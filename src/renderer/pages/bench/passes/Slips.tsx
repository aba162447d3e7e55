import { type ReactElement, useMemo } from 'react';
import { slipsIn } from '../../../../domain/agreement/slips.ts';
import type { Reading } from '../../../../domain/measuring/reading.ts';
import { landmarkName } from '../../../../words/landmarks.ts';
import { choosePoint } from '../../../bench/deeds/points.ts';
import { takeUp } from '../../../bench/deeds/travel.ts';
import { readingDraftOf } from '../../../bench/document.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { focusPhoto } from '../focusPhoto.ts';
import style from '../panel.module.css';
import { useSettledDocument, useWork } from '../useWork.ts';

/** Points of this observer that lie where another pass has another landmark: most likely one of the two was named wrongly. */
export function Slips({ others }: { others: readonly Reading[] }): ReactElement | null {
  const { bench, sheet, pass } = useWork();
  const document = useSettledDocument();
  const slips = useMemo(() => {
    const draft = readingDraftOf(document, pass);
    return slipsIn([...others.filter(({ observer }) => observer === draft.observer), { ...draft, photoId: sheet.photo.id }]);
  }, [document, pass, others, sheet.photo.id]);
  if (slips.length === 0) return null;
  return (
    <Notice tone="warning" title={slips.length === 1 ? 'One point may be named wrongly' : `${slips.length} points may be named wrongly`}>
      <ul className={style['slips']}>
        {slips.map(({ name, takenFor }) => (
          <li key={name}>
            “{landmarkName(name)}” lies in one pass where “{landmarkName(takenFor)}” lies in another: which of the passes is right?
            <div className={style['answers']}>
              <Button
                onClick={() => {
                  takeUp(bench, 'landmarks');
                  choosePoint(bench, name);
                  focusPhoto();
                }}
              >
                Go to it
              </Button>
            </div>
          </li>
        ))}
      </ul>
      Until it is put right it counts neither for how well your hand repeats nor for how well passes agree.
    </Notice>
  );
}
