import type { ReactElement } from 'react';
import {
  TYPED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM,
  typedFaceHeightStandardUncertaintyMm,
} from '../../../../domain/measuring/faceHeight.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { NumberField } from '../NumberField.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
import style from '../panel.module.css';

interface Props {
  heightMm: number;
  standardUncertaintyMm: number;
  /** Counts with each key, for fields that a button beside them waits for. */
  atOnce?: boolean;
  onChange: (known: { heightMm?: number; faceHeightStandardUncertaintyMm?: number }) => void;
}

/** How high the marked face of a rule lies, which nobody sees in the picture: what is taken for it stands here, to be changed. */
export function FaceHeightFields({ heightMm, standardUncertaintyMm, atOnce = false, onChange }: Props): ReactElement {
  return (
    <>
      <div className={style['pair']}>
        <NumberField
          label="Above the table, mm"
          value={heightMm}
          most={100}
          atOnce={atOnce}
          onChange={(typed) =>
            onChange({
              heightMm: typed,
              faceHeightStandardUncertaintyMm: typedFaceHeightStandardUncertaintyMm({ heightMm, standardUncertaintyMm }),
            })
          }
        />
        <PlusMinusField
          label="Height, ± mm"
          standardUncertainty={standardUncertaintyMm}
          most={100}
          atOnce={atOnce}
          onChange={(faceHeightStandardUncertaintyMm) => onChange({ faceHeightStandardUncertaintyMm })}
        />
      </div>
      <p className={style['soft']}>
        A thick rule looks larger, being nearer to the camera: from 30 cm, each millimeter changes all lengths by 0.3 %. Measure how thick
        it is at its marks; a height typed in is taken to be known to ± {COVERAGE_FACTOR * TYPED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM} mm
        until you say otherwise.
      </p>
    </>
  );
}
