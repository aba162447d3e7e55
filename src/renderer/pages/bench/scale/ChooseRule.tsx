import { type ReactElement, useState } from 'react';
import type { Graduation } from '../../../../domain/finding/refinement.ts';
import { ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM } from '../../../../domain/measuring/faceHeight.ts';
import type { PointedObject } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import { Select } from '../../../parts/Select.tsx';
import style from '../panel.module.css';
import { FaceHeightFields } from './FaceHeightFields.tsx';
import { GRADUATION_OPTIONS } from './objects.ts';

/** A rule by two clicks: all ticks between them are found and counted. */
export function ChooseRule({ onChosen }: { onChosen: (object: PointedObject) => void }): ReactElement {
  const [graduation, setGraduation] = useState<Graduation>('millimeter');
  const [face, setFace] = useState({ heightMm: 0, faceHeightStandardUncertaintyMm: ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM });
  return (
    <>
      <Select label="Between two ticks" value={graduation} options={GRADUATION_OPTIONS} onChange={setGraduation} />
      <FaceHeightFields
        heightMm={face.heightMm}
        standardUncertaintyMm={face.faceHeightStandardUncertaintyMm}
        atOnce
        onChange={(known) => setFace((before) => ({ ...before, ...known }))}
      />
      <p className={style['soft']}>
        A bent rule has no one scale: click on its straightest part, near the skin. Where its ticks are not found, choose “A rule, or a
        length you know” instead and mark two of them.
      </p>
      <Button kind="primary" onClick={() => onChosen({ kind: 'rule', graduation, ...face })}>
        Click two ticks, far apart
      </Button>
    </>
  );
}
