import type { ReactElement } from 'react';
import { choosePoint } from '../../../bench/deeds/points.ts';
import { landmarksOf, placedScaleOf } from '../../../bench/document.ts';
import { isLandmarkName } from '../../../bench/handles.ts';
import { progressOf } from '../../../bench/steps.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { ProgressBar } from '../../../parts/ProgressBar.tsx';
import { DOUBTS_OF_PLACES, Doubts } from '../lengths/Doubts.tsx';
import style from '../panel.module.css';
import { useBench, useSettledDocument, useWork } from '../useWork.ts';
import { CarapaceHeightFields } from './CarapaceHeightFields.tsx';
import { GuidePlate } from './GuidePlate.tsx';
import { LandmarkList } from './LandmarkList.tsx';
import { NextStep } from './NextStep.tsx';
import { PointHeightFields } from './PointHeightFields.tsx';
import { PointingField } from './PointingField.tsx';

/** The points of the skin: which comes next, what cannot be marked, and all of them in a list. */
export function LandmarksPanel(): ReactElement {
  const { bench } = useWork();
  const document = useSettledDocument();
  const asked = useBench((state) => state.guide.current);
  const selected = useBench((state) => state.selected);
  const landmarks = landmarksOf(document);
  const progress = progressOf(landmarks);
  return (
    <section className={style['panel']}>
      {placedScaleOf(document) === undefined && (
        <Notice>This photo has no scale yet. Points can be placed already; millimeters follow with the known size.</Notice>
      )}
      <Doubts only={DOUBTS_OF_PLACES} />
      <GuidePlate
        landmarks={landmarks}
        asked={asked}
        selected={selected !== null && isLandmarkName(selected) ? selected : null}
        onChoose={(name) => choosePoint(bench, name)}
      />
      <NextStep landmarks={landmarks} />
      <div>
        <ProgressBar label="Points answered" done={progress.done} total={progress.total} />
        <p className={`${style['soft']} figures`}>
          {progress.done} of {progress.total} points answered
        </p>
      </div>
      <hr className={style['rule']} />
      {selected !== null && isLandmarkName(selected) && <PointHeightFields key={selected} name={selected} />}
      <CarapaceHeightFields />
      <PointingField />
      <hr className={style['rule']} />
      <LandmarkList landmarks={landmarks} />
    </section>
  );
}
