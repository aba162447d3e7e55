import type { ReactElement } from 'react';
import type { CoinScale } from '../../../../domain/measuring/calibration.ts';
import { sidesToAskFor } from '../../../../domain/measuring/coinSide.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { directionInWords } from './findingWords.ts';

/** The outline of a coin is that of two tilted planes: which edge was nearer to the camera, only the keeper knows. */
export function CoinSide({ marks }: { marks: CoinScale }): ReactElement | null {
  const { bench, sheet } = useWork();
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
      <label className={style['choiceLine']}>
        <input type="radio" name="coin-side" checked={chosen === null} onChange={() => choose(null)} />I cannot say: allow for both
      </label>
    </fieldset>
  );
}

function isNearest(chosen: number, candidate: number, all: readonly { readonly nearEdgeRad: number }[]): boolean {
  return all.every(({ nearEdgeRad }) => Math.cos(chosen - candidate) >= Math.cos(chosen - nearEdgeRad));
}
