import type { ReactElement } from 'react';
import { choosePoint } from '../../../bench/deeds/points.ts';
import { landmarksOf, placedScaleOf } from '../../../bench/document.ts';
import { isLandmarkName } from '../../../bench/handles.ts';
import { askedPoints, progressOf } from '../../../bench/steps.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { ProgressBar } from '../../../parts/ProgressBar.tsx';
import { VentralPlate } from '../../../parts/plates/VentralPlate.tsx';
import { DOUBTS_OF_PLACES, Doubts } from '../lengths/Doubts.tsx';
import style from '../panel.module.css';
import { useBench, useSettledDocument, useWork } from '../useWork.ts';
import { AskedFor } from './AskedFor.tsx';
import { CarapaceHeightFields } from './CarapaceHeightFields.tsx';
import { Enough } from './Enough.tsx';
import { GuidePlate } from './GuidePlate.tsx';
import { LandmarkList } from './LandmarkList.tsx';
import { NextStep } from './NextStep.tsx';
import { OwnDistanceName } from './OwnDistanceName.tsx';
import { PointHeightFields } from './PointHeightFields.tsx';
import { PointingField } from './PointingField.tsx';

/** The points of the skin: which comes next, what cannot be marked, and all of them in a list. */
export function LandmarksPanel(): ReactElement {
  const { bench } = useWork();
  const document = useSettledDocument();
  const asked = useBench((state) => state.guide.current);
  const selected = useBench((state) => state.selected);
  const asks = useBench((state) => state.guide.asks);
  const landmarks = landmarksOf(document);
  const progress = progressOf(landmarks, askedPoints(asks));
  return (
    <section className={style['panel']}>
      {placedScaleOf(document) === undefined && (
        <Notice>This photo has no scale yet. Points can be placed already; millimeters follow with the known size.</Notice>
      )}
      <Doubts only={DOUBTS_OF_PLACES} />
      <AskedFor />
      {asks === 'skin' ? (
        <GuidePlate
          landmarks={landmarks}
          asked={asked}
          selected={selected !== null && isLandmarkName(selected) ? selected : null}
          onChoose={(name) => choosePoint(bench, name)}
        />
      ) : (
        <div>
          <p className={style['soft']}>
            Single distances, each between two points. The skin is seen from inside, so its left is on the left of the picture when the
            stalk of the abdomen points up. Whatever is not wanted is skipped.
          </p>
          <details>
            <summary className={style['summary']}>Drawing: what lies where</summary>
            <VentralPlate />
          </details>
        </div>
      )}
      <NextStep landmarks={landmarks} />
      <div>
        <ProgressBar label="Points answered" done={progress.done} total={progress.total} />
        <p className={`${style['soft']} figures`}>
          {progress.done} of {progress.total} points answered
        </p>
        {progress.done > 0 && asked !== null && <Enough />}
      </div>
      <hr className={style['rule']} />
      {selected !== null && isLandmarkName(selected) && <PointHeightFields key={selected} name={selected} />}
      {asks === 'skin' && <CarapaceHeightFields />}
      {asks === 'abdomen' && <OwnDistanceName landmarks={landmarks} />}
      <PointingField />
      <hr className={style['rule']} />
      <LandmarkList landmarks={landmarks} />
    </section>
  );
}
