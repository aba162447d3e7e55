import { type ReactElement, useState } from 'react';
import { CARAPACE_HEIGHT_SHARES } from '../../../../domain/measuring/heights.ts';
import type { Measurement, Quantity } from '../../../../domain/measuring/quantity.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { sameValue } from '../../../bench/change.ts';
import { setHeight } from '../../../bench/deeds/points.ts';
import { NumberField } from '../NumberField.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
import style from '../panel.module.css';
import { useBench, useMeasured, useSettledDocument, useWork } from '../useWork.ts';

/** How well a height is taken to be measured until the keeper says otherwise. Own assumption. */
const FIRST_STANDARD_UNCERTAINTY_MM = 0.5;

/** How high the carapace stands above the table, and what allowing for it changes. */
export function CarapaceHeightFields(): ReactElement {
  const { bench, pass, sheet } = useWork();
  const height = useBench((state) => state.edited.document.height) ?? { kind: 'assumed' };
  const { measurement } = useMeasured(useSettledDocument());
  // Choosing to measure changes nothing by itself: the height stays assumed until there is a number.
  const [isMeasuring, setIsMeasuring] = useState(false);
  const [firstUncertaintyMm, setFirstUncertaintyMm] = useState(FIRST_STANDARD_UNCERTAINTY_MM);
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
  return (
    <fieldset>
      <legend className={style['legend']}>Height of the carapace edge above the table</legend>
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
      {!isEntered && isMeasuring && <p className={style['soft']}>Until a height is typed in, the assumed one counts.</p>}
      <p className={style['soft']}>{correctionInWords(measurement)}</p>
    </fieldset>
  );
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
