import { type ReactElement, useMemo } from 'react';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { lensShowsOn } from '../../../../domain/measuring/lens/lensShows.ts';
import { lensInWords } from '../../../../words/lens.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { CheckField } from '../../../parts/CheckField.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';

/** What was found of the lens, and whether its bending is undone: the keeper can leave it. */
export function LensFacts({ marks, calibration }: { marks: ScaleMarks; calibration: Calibration }): ReactElement {
  const { bench, sheet } = useWork();
  const { lens } = calibration;
  const shows = useMemo(() => lensShowsOn(marks, calibration, sheet.photo), [marks, calibration, sheet.photo]);
  const canChoose = marks.kind !== 'two-points' && marks.kind !== 'coin' && (lens.isCorrected || lens.reason === 'switched-off');
  const choose = (corrects: boolean) => {
    if (marks.kind === 'two-points' || marks.kind === 'coin') return;
    const { keepsDistortion: _, ...corrected } = marks;
    changeScale(bench, corrects ? corrected : { ...marks, keepsDistortion: true });
  };
  // By the marks, which change with the click; the calibration follows when there is time.
  const isKept = 'keepsDistortion' in marks && marks.keepsDistortion === true;
  const words = lensInWords(lens, marks.kind, shows);
  return (
    <div>
      {canChoose && (
        <CheckField checked={!isKept} onChange={choose}>
          Correct the distortion of the lens
        </CheckField>
      )}
      <p className={style['soft']}>{canChoose ? words : `Distortion of the lens. ${words}`}</p>
    </div>
  );
}
