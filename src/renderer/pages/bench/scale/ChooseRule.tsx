import { type ReactElement, useState } from 'react';
import type { Graduation } from '../../../../domain/finding/refinement.ts';
import type { PointedObject } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import { Select } from '../../../parts/Select.tsx';
import { NumberField } from '../NumberField.tsx';
import style from '../panel.module.css';
import { GRADUATION_OPTIONS } from './objects.ts';

/** A rule by two clicks: all ticks between them are found and counted. */
export function ChooseRule({ onChosen }: { onChosen: (object: PointedObject) => void }): ReactElement {
  const [graduation, setGraduation] = useState<Graduation>('millimeter');
  const [heightMm, setHeightMm] = useState(0);
  return (
    <>
      <div className={style['pair']}>
        <Select label="Between two ticks" value={graduation} options={GRADUATION_OPTIONS} onChange={setGraduation} />
        <NumberField label="Face above the table, mm" value={heightMm} most={100} atOnce onChange={setHeightMm} />
      </div>
      <Button kind="primary" onClick={() => onChosen({ kind: 'rule', graduation, heightMm })}>
        Click two ticks, far apart
      </Button>
    </>
  );
}
