import { type ReactElement, useState } from 'react';
import { scaleObjectName } from '../../../../words/measuring.ts';
import { putHandlesDown, removeScale } from '../../../bench/deeds/scale.ts';
import { stepBack } from '../../../bench/deeds/travel.ts';
import { Button } from '../../../parts/Button.tsx';
import { HandleList } from '../HandleList.tsx';
import style from '../panel.module.css';
import { useBench, useCalibration, useLiveDocument, useWork } from '../useWork.ts';
import { CalibrationFacts } from './CalibrationFacts.tsx';
import { ChooseObject } from './ChooseObject.tsx';
import { ObjectSize } from './ObjectSize.tsx';
import { RoundCorners } from './RoundCorners.tsx';

/** The scale: choosing an object, marking it, and what it says about the picture. */
export function ScalePanel(): ReactElement {
  const { bench } = useWork();
  const placing = useBench((state) => state.placing);
  const marks = useBench((state) => state.edited.document.scale);
  const calibration = useCalibration(useLiveDocument());
  const [choosing, setChoosing] = useState(false);

  if (placing !== null) return <Placing hasRoundCorners={placing.object.kind === 'rectangle' && placing.object.object === 'id-1'} />;
  if (marks === undefined || choosing) return <ChooseObject onCancel={marks === undefined ? null : () => setChoosing(false)} />;
  return (
    <section className={style['panel']}>
      <h2>{scaleObjectName(marks)}</h2>
      {calibration !== null && <CalibrationFacts calibration={calibration} />}
      {marks.kind === 'rectangle' && marks.object === 'id-1' && <RoundCorners />}
      <HandleList />
      <hr className={style['rule']} />
      <ObjectSize marks={marks} />
      <div className={style['row']}>
        <Button onClick={() => setChoosing(true)}>Another object</Button>
        <Button kind="danger" icon="remove" onClick={() => removeScale(bench)}>
          Remove the scale
        </Button>
      </div>
    </section>
  );
}

function Placing({ hasRoundCorners }: { hasRoundCorners: boolean }): ReactElement {
  const { bench } = useWork();
  const placing = useBench((state) => state.placing);
  const isRule = placing?.kind === 'placingEnds';
  return (
    <section className={style['panel']}>
      <h2>{isRule ? 'Mark the two ends' : 'Mark the four corners'}</h2>
      <p>
        {isRule
          ? 'Click the first mark and then the second, as far apart as you can read.'
          : 'Click near each corner, in any order. Then drag each handle to its exact place; the loupe helps.'}
      </p>
      {hasRoundCorners && <RoundCorners />}
      <p className={style['soft']}>
        {placing?.placed.length ?? 0} of {isRule ? 2 : 4} placed
      </p>
      <div className={style['row']}>
        <Button onClick={() => putHandlesDown(bench)}>Put all down, to be dragged</Button>
        <Button onClick={() => stepBack(bench)}>{(placing?.placed.length ?? 0) > 0 ? 'Take the last back' : 'Cancel'}</Button>
      </div>
    </section>
  );
}
