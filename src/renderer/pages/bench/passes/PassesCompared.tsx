import { type ReactElement, useMemo } from 'react';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import { measure } from '../../../../domain/measuring/measure.ts';
import { COVERAGE_FACTOR, type Measurement, type Quantity } from '../../../../domain/measuring/quantity.ts';
import type { Reading } from '../../../../domain/measuring/reading.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { quantityName } from '../../../../words/quantities.ts';
import panelStyle from '../panel.module.css';
import { useWork } from '../useWork.ts';
import style from './PassesCompared.module.css';

interface Props {
  calibration: Calibration;
  /** What the pass in hand gives. */
  measurement: Measurement;
  pass: number;
  other: Reading;
}

const SEGMENT = /^leg-..-/;

/** The values of the pass in hand beside those of another one, under the same scale, and by how much they differ. */
export function PassesCompared({ calibration, measurement, pass, other }: Props): ReactElement | null {
  const { photo } = useWork().sheet;
  const theirs = useMemo(() => measure(other, calibration, { shown: shownOn(photo) }).quantities, [other, calibration, photo]);
  const rows = measurement.quantities.flatMap(({ name, unit, estimate, budget }) => {
    const their = theirs.find((quantity) => quantity.name === name);
    if (their === undefined || unit !== 'mm' || SEGMENT.test(name)) return [];
    // Under one scale and the same heights the hand alone differs.
    const withinMm = COVERAGE_FACTOR * Math.hypot(byHandMm(budget), byHandMm(their.budget));
    return [{ name, oursMm: estimate.value, theirsMm: their.estimate.value, withinMm }];
  });
  if (rows.length === 0) return null;
  return (
    <details className={style['compared']}>
      <summary>Compare with pass {other.pass}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">mm</th>
            <th scope="col">Pass {pass}</th>
            <th scope="col">Pass {other.pass}</th>
            <th scope="col">Difference</th>
          </tr>
        </thead>
        <tbody className="figures">
          {rows.map(({ name, oursMm, theirsMm, withinMm }) => (
            <tr key={name}>
              <th scope="row">{quantityName(name)}</th>
              <td>{oursMm.toFixed(2)}</td>
              <td>{theirsMm.toFixed(2)}</td>
              <td>
                {differenceInWords(oursMm, theirsMm)}
                {Math.abs(oursMm - theirsMm) > withinMm && <strong> exceeds ± {withinMm.toFixed(2)}</strong>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={panelStyle['soft']}>
        {rows.some(({ oursMm, theirsMm, withinMm }) => Math.abs(oursMm - theirsMm) > withinMm)
          ? 'The ± is what the hand alone explains, 95 times in 100: where a difference exceeds it, look at the points of both passes.'
          : 'No difference is larger than what the hand alone explains, 95 times in 100.'}
      </p>
    </details>
  );
}

function byHandMm(budget: Quantity['budget']): number {
  return budget.find(({ source }) => source === 'pointing')?.standardUncertainty ?? 0;
}

/** Of the figures as they stand beside it. */
function differenceInWords(oursMm: number, theirsMm: number): string {
  const differenceMm = Number(oursMm.toFixed(2)) - Number(theirsMm.toFixed(2));
  const figures = Math.abs(differenceMm).toFixed(2);
  if (Number(figures) === 0) return figures;
  return `${differenceMm < 0 ? '−' : '+'}${figures}`;
}
