import type { ReactElement } from 'react';
import type { LandmarkName, Landmarks } from '../../../../domain/measuring/landmarks.ts';
import { capitalized, LEG_LABELS } from '../../../../words/labels.ts';
import { landmarkDefinition, landmarkName } from '../../../../words/landmarks.ts';
import { askAgain, clearPoints, markAsked, markLeg, markLegRegrown, skipAsked, skipAskedGroup } from '../../../bench/deeds/points.ts';
import { isLandmarkName } from '../../../bench/handles.ts';
import { canBeMissing, groupOf, isDistance, isLeg, type LandmarkGroup } from '../../../bench/steps.ts';
import { Button } from '../../../parts/Button.tsx';
import { useBench, useWork } from '../useWork.ts';
import style from './NextStep.module.css';

/** What the guide asks for next, and below it the point that is selected. */
export function NextStep({ landmarks }: { landmarks: Landmarks }): ReactElement {
  const asked = useBench((state) => state.guide.current);
  const selected = useBench((state) => state.selected);
  return (
    <div>
      {asked === null ? <AllAnswered /> : <AskedPoint name={asked} isPlaced={landmarks[asked] !== undefined} />}
      {selected !== null && isLandmarkName(selected) && <SelectedPoint name={selected} />}
    </div>
  );
}

function AskedPoint({ name, isPlaced }: { name: LandmarkName; isPlaced: boolean }): ReactElement {
  const { bench } = useWork();
  return (
    <div className={style['step']}>
      <h2>{capitalized(landmarkName(name))}</h2>
      <p>{landmarkDefinition(name)}</p>
      {isPlaced && <p className={style['soft']}>This point has an answer already; a click gives it a new one.</p>}
      <fieldset className={style['answers']}>
        <legend>Only this point</legend>
        <div className={style['row']}>
          <Button onClick={() => skipAsked(bench)}>Skip</Button>
          {canBeMissing(name) && <Button onClick={() => markAsked(bench, 'missing')}>Missing</Button>}
          <Button onClick={() => markAsked(bench, 'not-visible')}>Not visible</Button>
        </div>
      </fieldset>
      <WholeGroup group={groupOf(name)} />
    </div>
  );
}

function SelectedPoint({ name }: { name: LandmarkName }): ReactElement {
  const { bench } = useWork();
  return (
    <div className={style['selected']}>
      <span>Selected: {landmarkName(name)}</span>
      <Button kind="quiet" onClick={() => clearPoints(bench, [name])}>
        Place anew
      </Button>
    </div>
  );
}

function WholeGroup({ group }: { group: LandmarkGroup }): ReactElement | null {
  const { bench } = useWork();
  const isRegrown = useBench((state) => isLeg(group) && state.guide.regrown.has(group));
  if (isDistance(group)) return <Button onClick={() => skipAskedGroup(bench, group)}>Skip this distance</Button>;
  if (!isLeg(group)) return null;
  return (
    <fieldset className={style['whole']}>
      <legend>The whole of {LEG_LABELS[group]}</legend>
      <div className={style['row']}>
        <Button kind="quiet" onClick={() => skipAskedGroup(bench, group)}>
          Skip the leg
        </Button>
        <Button kind="quiet" onClick={() => markLeg(bench, group, 'missing')}>
          Leg missing
        </Button>
        <Button kind="quiet" onClick={() => markLeg(bench, group, 'not-visible')}>
          Leg not visible
        </Button>
        <Button kind="quiet" aria-pressed={isRegrown} onClick={() => markLegRegrown(bench, group, !isRegrown)}>
          Leg regenerated
        </Button>
      </div>
    </fieldset>
  );
}

function AllAnswered(): ReactElement {
  const { bench } = useWork();
  const skipped = useBench((state) => state.guide.skipped.size);
  return (
    <div className={style['step']}>
      <h2>{skipped === 0 ? 'Every point has its answer' : 'All asked'}</h2>
      {skipped === 0 ? (
        <p>Choose any point in the drawing or on the photo to look at it again.</p>
      ) : (
        <>
          <p>{skipped === 1 ? 'One point was skipped.' : `${skipped} points were skipped.`}</p>
          <div className={style['row']}>
            <Button onClick={() => askAgain(bench)}>Ask for them again</Button>
          </div>
        </>
      )}
    </div>
  );
}
