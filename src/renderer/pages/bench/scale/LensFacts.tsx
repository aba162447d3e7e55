import type { ReactElement } from 'react';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { radialShiftOf } from '../../../../domain/measuring/distortion.ts';
import { lensInWords } from '../../../../words/lens.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { CheckField } from '../../../parts/CheckField.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';

/** What was found of the lens, and whether its bending is undone: the keeper can leave it. */
export function LensFacts({ marks, calibration: { lens } }: { marks: ScaleMarks; calibration: Calibration }): ReactElement {
  const { bench, sheet } = useWork();
  const canChoose = marks.kind !== 'two-points' && marks.kind !== 'coin' && (lens.isCorrected || lens.reason === 'switched-off');
  const choose = (corrects: boolean) => {
    if (marks.kind === 'two-points' || marks.kind === 'coin') return;
    const { keepsDistortion: _, ...corrected } = marks;
    changeScale(bench, corrects ? corrected : { ...marks, keepsDistortion: true });
  };
  return (
    <div>
      {canChoose && (
        <CheckField checked={lens.isCorrected} onChange={choose}>
          Correct the distortion of the lens
        </CheckField>
      )}
      <p className={style['soft']}>Distortion of the lens. {lensInWords(lens, radialShiftOf(sheet.photo, 0).cornerPx)}</p>
    </div>
  );
}
