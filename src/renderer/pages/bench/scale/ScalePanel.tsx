import { type ReactElement, useState } from 'react';
import type { FoundScale } from '../../../../domain/finding/foundScale.ts';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { scaleObjectName } from '../../../../words/scaleObjects.ts';
import { wantRefined } from '../../../bench/deeds/finding.ts';
import { dropPlacing, putHandlesDown, removeScale } from '../../../bench/deeds/scale.ts';
import { stepBack } from '../../../bench/deeds/travel.ts';
import { scaleHandlesOf } from '../../../bench/handles.ts';
import type { ScaleRole } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import { bringIntoView } from '../../../parts/bringIntoView.ts';
import { focusPhoto } from '../focusPhoto.ts';
import { HandleList } from '../HandleList.tsx';
import style from '../panel.module.css';
import type { OpenPicture } from '../picture/picture.ts';
import { FromAbove } from '../plane/FromAbove.tsx';
import { useBench, useCalibration, useLiveDocument, useWork } from '../useWork.ts';
import { CalibrationFacts } from './CalibrationFacts.tsx';
import { ChooseObject } from './ChooseObject.tsx';
import { CoinSide } from './CoinSide.tsx';
import { ContradictedScale } from './Contradictions.tsx';
import { FoundFacts } from './FoundFacts.tsx';
import { LensFacts } from './LensFacts.tsx';
import { ObjectSize } from './ObjectSize.tsx';
import { Finding, PointingAt } from './PointingAt.tsx';
import { RoundCorners } from './RoundCorners.tsx';
import { SecondObject } from './SecondObject.tsx';
import { useDisagreements } from './useProposals.ts';

interface Choosing {
  readonly role: ScaleRole;
  readonly found: FoundScale | null;
  readonly check: ScaleMarks | undefined;
}

/** The scale: choosing an object, marking it, and what it says about the picture. Each of them begins at its heading. */
export function ScalePanel({ picture }: { picture: OpenPicture }): ReactElement {
  const { bench } = useWork();
  const placing = useBench((state) => state.placing);
  const marks = useBench((state) => state.edited.document.scale);
  const rough = useBench((state) => state.edited.document.roughScale);
  const refining = useBench((state) => state.refining);
  const calibration = useCalibration(useLiveDocument());
  const disagreements = useDisagreements(picture);
  const found = useBench((state) => state.found);
  const check = useBench((state) => state.edited.document.check);
  // What there was when the keeper began to choose an object: taking one over ends the choosing.
  const [chosen, setChosen] = useState<Choosing | null>(null);
  const choosing = chosen !== null && chosen.found === found && chosen.check === check ? chosen.role : null;
  const choose = (role: ScaleRole) => setChosen({ role, found, check });
  const endChoosing = () => setChosen(null);

  if (placing?.kind === 'pointingAt') return <PointingAt placing={placing} />;
  if (placing !== null) return <Placing hasRoundCorners={placing.object.kind === 'rectangle' && placing.object.object === 'id-1'} />;
  if (marks === undefined || choosing !== null)
    return (
      <>
        {refining !== null && (
          <section className={style['panel']}>
            <Finding refining={refining} />
          </section>
        )}
        <ChooseObject
          role={marks === undefined ? 'scale' : (choosing ?? 'scale')}
          onChosen={endChoosing}
          onCancel={marks === undefined ? null : () => thenPhoto(endChoosing)}
        />
      </>
    );
  if (rough !== undefined) return <PutDown marks={marks} left={rough.length} />;
  return (
    <section className={style['panel']}>
      <h2 ref={bringIntoView}>{scaleObjectName(marks)}</h2>
      {refining !== null && <Finding refining={refining} />}
      <ContradictedScale disagreements={disagreements} />
      {check !== undefined && <SecondObject marks={marks} check={check} />}
      {marks.kind === 'coin' && <CoinSide marks={marks} />}
      <FoundFacts marks={marks} />
      {calibration !== null && <CalibrationFacts calibration={calibration} />}
      {calibration?.ok && <LensFacts marks={marks} calibration={calibration.value} />}
      <div className={style['row']}>
        {marks.kind === 'rectangle' && (
          <Button
            disabled={refining?.kind === 'wanted' || calibration?.ok === false}
            onClick={() => wantRefined(bench, { kind: 'rectangle', marks, cornerRadiusMm: 0 })}
          >
            Fit to the edges
          </Button>
        )}
        {calibration?.ok && <FromAboveButton calibration={calibration.value} picture={picture} />}
      </div>
      {marks.kind === 'rectangle' && marks.object === 'id-1' && <RoundCorners />}
      <HandleList />
      <hr className={style['rule']} />
      <ObjectSize marks={marks} />
      <div className={style['row']}>
        {check === undefined && <Button onClick={() => thenPhoto(() => choose('check'))}>Check it by a second object</Button>}
        <Button onClick={() => thenPhoto(() => choose('scale'))}>Another object instead</Button>
        <Button kind="danger" icon="remove" onClick={() => thenPhoto(() => removeScale(bench))}>
          Remove the scale
        </Button>
      </div>
    </section>
  );
}

function FromAboveButton({ calibration, picture }: { calibration: Calibration; picture: OpenPicture }): ReactElement {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <>
      <Button icon="photo" onClick={() => setIsOpen(true)}>
        See it from straight above
      </Button>
      {isOpen && <FromAbove calibration={calibration} picture={picture} onClose={() => setIsOpen(false)} />}
    </>
  );
}

/** Marks that were put down anywhere: a scale only when each has been brought to its place. */
function PutDown({ marks, left }: { marks: ScaleMarks; left: number }): ReactElement {
  const { bench } = useWork();
  return (
    <section className={style['panel']}>
      <h2 ref={bringIntoView}>Bring each mark to its place</h2>
      <p>
        Drag each to where it belongs, or choose it in the list and use the arrow keys. One that lies right already needs one click on the
        photo. There is no scale before.
      </p>
      {marks.kind === 'rectangle' && <CutOff />}
      {marks.kind === 'rectangle' && marks.object === 'id-1' && <RoundCorners />}
      <p className={style['soft']} role="status">
        {scaleHandlesOf(marks).length - left} of {scaleHandlesOf(marks).length} in place
      </p>
      <HandleList />
      <div className={style['row']}>
        <Button kind="danger" icon="remove" onClick={() => thenPhoto(() => removeScale(bench))}>
          Remove the marks
        </Button>
      </div>
    </section>
  );
}

function CutOff(): ReactElement {
  return (
    <p className={style['soft']}>
      A corner that is covered, or cut off by the frame: mark it where the straight edges would meet, also beside the picture (zoom out, or
      drag the photo, for room). Then press “Fit to the edges”; three edges are enough where the picture tells its focal length.
    </p>
  );
}

function Placing({ hasRoundCorners }: { hasRoundCorners: boolean }): ReactElement {
  const { bench } = useWork();
  const placing = useBench((state) => state.placing);
  const canPutDown = useBench((state) => state.placingAs === 'scale');
  const isRule = placing?.kind === 'placingEnds';
  return (
    <section className={style['panel']}>
      <h2 ref={bringIntoView}>{isRule ? 'Mark the two ends' : 'Mark the four corners'}</h2>
      <p>
        {isRule
          ? 'Click the first mark and then the second, as far apart as you can read.'
          : canPutDown
            ? 'Click near each corner, in any order. Then drag each handle to its exact place; the loupe helps.'
            : 'Click each corner, in any order; the loupe helps. They can be fitted to the edges afterwards.'}
      </p>
      {!isRule && <CutOff />}
      {hasRoundCorners && <RoundCorners />}
      <p className={style['soft']}>
        {placing?.placed.length ?? 0} of {isRule ? 2 : 4} placed
      </p>
      <div className={style['row']}>
        {canPutDown && <Button onClick={() => thenPhoto(() => putHandlesDown(bench))}>Put all down, to be dragged</Button>}
        {(placing?.placed.length ?? 0) > 0 && <Button onClick={() => stepBack(bench)}>Take the last back</Button>}
        <Button onClick={() => thenPhoto(() => dropPlacing(bench))}>Cancel</Button>
      </div>
    </section>
  );
}

/** For buttons that are gone once they are pressed. */
function thenPhoto(act: () => void): void {
  act();
  focusPhoto();
}
