import type { ReactElement } from 'react';
import { CARAPACE_HEIGHT_SHARE } from '../../../../domain/measuring/heights.ts';
import { COVERAGE_FACTOR, type Measurement, type Quantity } from '../../../../domain/measuring/quantity.ts';
import { sameValue } from '../../../bench/change.ts';
import { setHeight } from '../../../bench/deeds/points.ts';
import { NumberField } from '../NumberField.tsx';
import style from '../panel.module.css';
import { useBench, useMeasured, useSettledDocument, useWork } from '../useWork.ts';

/** What is entered first when a keeper chooses to enter a height that the picture does not suggest. */
const FIRST_HEIGHT_MM = 5;

/** How high the carapace stands above the table, and what allowing for it changes. */
export function CarapaceHeightFields(): ReactElement {
  const { bench, pass } = useWork();
  const height = useBench((state) => state.edited.document.height) ?? { kind: 'assumed' };
  const { measurement } = useMeasured(useSettledDocument());
  const width = named(measurement, 'carapace-width');
  const isInherited = pass.inheritedHeight !== null && sameValue(height, pass.inheritedHeight);
  const enter = () => {
    const heightMm = width === null ? FIRST_HEIGHT_MM : Math.round(10 * CARAPACE_HEIGHT_SHARE * width.estimate.value) / 10;
    setHeight(bench, { kind: 'entered', heightMm, standardUncertaintyMm: 0.5 });
  };
  return (
    <fieldset>
      <legend className={style['legend']}>Height of the carapace edge above the table</legend>
      <label className={style['choiceLine']}>
        <input
          type="radio"
          name="carapace-height"
          checked={height.kind === 'assumed'}
          onChange={() => setHeight(bench, { kind: 'assumed' })}
        />
        Not measured: take {CARAPACE_HEIGHT_SHARE} of its width
      </label>
      <br />
      <label className={style['choiceLine']}>
        <input type="radio" name="carapace-height" checked={height.kind === 'entered'} onChange={enter} />
        Measured
      </label>
      <p className={style['soft']}>
        Of the edge, where the four points lie, not of the top of the dome.
        {isInherited && ' Taken over from the pass before: it belongs to the skin.'}
      </p>
      {height.kind === 'entered' && (
        <div className={style['pair']}>
          <NumberField
            label="Height, mm"
            value={height.heightMm}
            most={100}
            onChange={(heightMm) => setHeight(bench, { ...height, heightMm })}
          />
          <NumberField
            label="Known to ± mm (k = 2)"
            value={COVERAGE_FACTOR * height.standardUncertaintyMm}
            figures={2}
            most={100}
            onChange={(expanded) => setHeight(bench, { ...height, standardUncertaintyMm: expanded / COVERAGE_FACTOR })}
          />
        </div>
      )}
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
