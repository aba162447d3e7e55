import { type ReactElement, useMemo } from 'react';
import { calibrate } from '../../../../domain/measuring/calibrate.ts';
import type { CoinScale, ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import type { PictureFacts } from '../../../../domain/measuring/camera.ts';
import { nearEdgeBySecondObject, sidesToAskFor } from '../../../../domain/measuring/coinSide.ts';
import { scaleObjectName } from '../../../../words/scaleObjects.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';
import { directionInWords } from './findingWords.ts';

/** The outline of a coin is that of two tilted planes: which edge was nearer to the camera, only the keeper knows. */
export function CoinSide({ marks }: { marks: CoinScale }): ReactElement | null {
  const { bench, sheet } = useWork();
  const check = useBench((state) => state.edited.document.check);
  const shown = useMemo(() => edgeShownBy(check, marks, sheet.photo), [check, marks, sheet.photo]);
  const solutions = sidesToAskFor(marks, sheet.photo);
  if (solutions === null) return null;
  const choose = (nearEdgeRad: number | null) => changeScale(bench, { ...marks, nearEdgeRad });
  const chosen = marks.nearEdgeRad;
  return (
    <fieldset>
      <legend className={style['legend']}>Which edge of the coin was nearer to the camera?</legend>
      {solutions.map(({ nearEdgeRad, tiltDeg }) => (
        <label key={nearEdgeRad} className={style['choiceLine']}>
          <input
            type="radio"
            name="coin-side"
            checked={chosen !== null && isNearest(chosen, nearEdgeRad, solutions)}
            onChange={() => choose(nearEdgeRad)}
          />
          The {directionInWords(nearEdgeRad)} one: camera tilted {tiltDeg.toFixed(1)}°
        </label>
      ))}
      {check !== undefined && shown !== null && (chosen === null || !isNearest(chosen, shown, solutions)) && (
        <Notice tone={chosen === null ? 'note' : 'warning'}>
          By “{scaleObjectName(check)}”, which lies on the same table, it was the {directionInWords(shown)} one.
          <div className={style['answers']}>
            <Button onClick={() => choose(shown)}>Take the {directionInWords(shown)} one</Button>
          </div>
        </Notice>
      )}
      <label className={style['choiceLine']}>
        <input type="radio" name="coin-side" checked={chosen === null} onChange={() => choose(null)} />I cannot say: allow for both
      </label>
    </fieldset>
  );
}

/** The plane that the second object tells must be that of the coin. Coins leave theirs open themselves. */
function edgeShownBy(check: ScaleMarks | undefined, marks: CoinScale, picture: PictureFacts): number | null {
  if (check === undefined || check.kind === 'coin') return null;
  const calibration = calibrate(check, picture);
  return calibration.ok ? nearEdgeBySecondObject(marks, picture, calibration.value) : null;
}

function isNearest(chosen: number, candidate: number, all: readonly { readonly nearEdgeRad: number }[]): boolean {
  return all.every(({ nearEdgeRad }) => Math.cos(chosen - candidate) >= Math.cos(chosen - nearEdgeRad));
}
