import { type ReactElement, useState } from 'react';
import { CARAPACE_HEIGHT_SHARES, TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM } from '../../../../domain/measuring/heights.ts';
import { CARAPACE_LANDMARKS, statedHeights } from '../../../../domain/measuring/landmarks.ts';
import type { Measurement, Quantity } from '../../../../domain/measuring/quantity.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { sameValue } from '../../../bench/change.ts';
import { setHeight, setPointHeights } from '../../../bench/deeds/points.ts';
import { landmarksOf } from '../../../bench/document.ts';
import { Button } from '../../../parts/Button.tsx';
import { NumberField } from '../NumberField.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
import style from '../panel.module.css';
import { useBench, useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import { HeightDoubt } from './HeightDoubt.tsx';

/** How high the carapace stands above the table, and what allowing for it changes. */
export function CarapaceHeightFields(): ReactElement {
  const { bench, pass, sheet } = useWork();
  const height = useBench((state) => state.edited.document.height) ?? { kind: 'assumed' };
  const document = useSettledDocument();
  const { measurement } = useMeasured(document);
  const stated = statedHeights(landmarksOf(document));
  const own = CARAPACE_LANDMARKS.filter((name) => stated[name] !== undefined);
  // Choosing to measure changes nothing by itself: the height stays assumed until there is a number.
  const [isMeasuring, setIsMeasuring] = useState(false);
  const [firstUncertaintyMm, setFirstUncertaintyMm] = useState(TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM);
  const isEntered = height.kind === 'entered';
  const standardUncertaintyMm = isEntered ? height.standardUncertaintyMm : firstUncertaintyMm;
  const shown = shownOn(sheet.photo);
  const isInherited = pass.inheritedHeight !== null && sameValue(height, pass.inheritedHeight);
  const assume = () => {
    setIsMeasuring(false);
    if (isEntered) setHeight(bench, { kind: 'assumed' });
  };
  const enter = (heightMm: number) => {
    setIsMeasuring(false);
    setHeight(bench, { kind: 'entered', heightMm, standardUncertaintyMm });
  };
  const enterUncertainty = (entered: number) => {
    if (isEntered) setHeight(bench, { ...height, standardUncertaintyMm: entered });
    else setFirstUncertaintyMm(entered);
  };
  const ownHeights = own.length > 0 && (
    <>
      <p>{ownInWords(own.length)}</p>
      <div className={style['row']}>
        <Button kind="quiet" onClick={() => setPointHeights(bench, own, null)}>
          Take their own heights away
        </Button>
      </div>
    </>
  );
  if (own.length === CARAPACE_LANDMARKS.length)
    return (
      <fieldset>
        <legend className={style['legend']}>Height of the carapace edge above the table</legend>
        {ownHeights}
        <p className={style['soft']}>{correctionInWords(measurement)}</p>
      </fieldset>
    );
  return (
    <fieldset>
      <legend className={style['legend']}>Height of the carapace edge above the table</legend>
      {ownHeights}
      <label className={style['choiceLine']}>
        <input type="radio" name="carapace-height" checked={!isEntered && !isMeasuring} onChange={assume} />
        Not measured: take {CARAPACE_HEIGHT_SHARES[shown].share} of its width{shown === 'animal' && ', as of an animal on its legs'}
      </label>
      <br />
      <label className={style['choiceLine']}>
        <input type="radio" name="carapace-height" checked={isEntered || isMeasuring} onChange={() => setIsMeasuring(true)} />
        Measured
      </label>
      <p className={style['soft']}>
        Of the edge, where the four points lie, not of the top of the dome.
        {isInherited && ' Taken over from the pass before: it belongs to the skin.'}
      </p>
      {(isEntered || isMeasuring) && (
        <div className={style['pair']}>
          <NumberField label="Height, mm" value={isEntered ? height.heightMm : null} most={100} onChange={enter} />
          <PlusMinusField
            label="Known to ± mm (k = 2)"
            standardUncertainty={standardUncertaintyMm}
            most={100}
            onChange={enterUncertainty}
          />
        </div>
      )}
      {isEntered && <HeightDoubt heightMm={height.heightMm} />}
      {!isEntered && isMeasuring && <p className={style['soft']}>Until a height is typed in, the assumed one counts.</p>}
      <p className={style['soft']}>{correctionInWords(measurement)}</p>
    </fieldset>
  );
}

function ownInWords(count: number): string {
  if (count === CARAPACE_LANDMARKS.length) return 'Each of the four points has a height of its own, which counts.';
  return `${count} of the ${CARAPACE_LANDMARKS.length} points ${count === 1 ? 'has' : 'have'} a height of ${count === 1 ? 'its' : 'their'} own, which counts for ${count === 1 ? 'it' : 'them'}. For the others:`;
}

function correctionInWords(measurement: Measurement | null): string {
  const length = named(measurement, 'carapace-length') ?? named(measurement, 'carapace-width');
  if (length === null) return 'What stands nearer to the camera looks larger. The correction appears here once the carapace is marked.';
  if (length.heightCorrection === null) {
    return 'The distance of the camera is not known, so nothing is corrected; the uncertainty is wider instead.';
  }
  const what = length.name === 'carapace-length' ? 'length' : 'width';
  const sign = length.heightCorrection < 0 ? '−' : '+';
  return `Changes the carapace ${what} by ${sign}${Math.abs(length.heightCorrection).toFixed(2)} mm.`;
}

function named(measurement: Measurement | null, name: string): Quantity | null {
  return measurement?.quantities.find((quantity) => quantity.name === name) ?? null;
}
