import { type ReactElement, useMemo } from 'react';
import { slipsIn } from '../../../../domain/agreement/slips.ts';
import type { Reading } from '../../../../domain/measuring/reading.ts';
import { choosePoint } from '../../../bench/deeds/points.ts';
import { takeUp } from '../../../bench/deeds/travel.ts';
import { readingDraftOf } from '../../../bench/document.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { focusPhoto } from '../focusPhoto.ts';
import style from '../panel.module.css';
import { useCalibration, useSettledDocument, useWork } from '../useWork.ts';
import { slipInWords } from './slipInWords.ts';

interface Props {
  others: readonly Reading[];
  /** Another pass can be opened as soon as the one in hand is stored. */
  isUnsent: boolean;
  open(reading: Reading): void;
}

/** Points of this observer that lie where another pass has another landmark: most likely one of the two was named wrongly. */
export function Slips({ others, isUnsent, open }: Props): ReactElement | null {
  const { bench, sheet, pass } = useWork();
  const document = useSettledDocument();
  const calibration = useCalibration(document);
  const slips = useMemo(() => {
    const draft = readingDraftOf(document, pass);
    return slipsIn([...others.filter(({ observer }) => observer === draft.observer), { ...draft, photoId: sheet.photo.id }]);
  }, [document, pass, others, sheet.photo.id]);
  if (slips.length === 0) return null;
  return (
    <Notice tone="warning" title={slips.length === 1 ? 'One point may be misplaced' : `${slips.length} points may be misplaced`}>
      <ul className={style['slips']}>
        {slips.map((slip) => (
          <li key={slip.name}>
            {slipInWords(slip, calibration?.ok ? calibration.value : null)}
            <div className={style['answers']}>
              {[slip.pass, slip.other].map((one) => {
                const reading = others.find((other) => other === one);
                return reading ? (
                  <Button key={reading.id} disabled={isUnsent} onClick={() => open(reading)}>
                    Open pass {reading.pass}
                  </Button>
                ) : (
                  <Button
                    key="in hand"
                    onClick={() => {
                      takeUp(bench, 'landmarks');
                      choosePoint(bench, slip.name);
                      focusPhoto();
                    }}
                  >
                    Go to it in this pass
                  </Button>
                );
              })}
            </div>
          </li>
        ))}
      </ul>
      Until it is put right it counts neither for how well your hand repeats nor for how well passes agree.
    </Notice>
  );
}
