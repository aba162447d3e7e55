import type { ReactElement } from 'react';
import { radialShiftOf } from '../../../../domain/measuring/distortion.ts';
import { COVERAGE_FACTOR, type Quantity } from '../../../../domain/measuring/quantity.ts';
import { coverageInWords } from '../../../../words/estimates.ts';
import { BUDGET_LABELS, capitalized } from '../../../../words/labels.ts';
import { lensInWords } from '../../../../words/lens.ts';
import { useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import style from './Budget.module.css';
import { budgetAdvice } from './budgetAdvice.ts';

/** Where the uncertainty comes from (JCGM 100:2008, 7.2.7): each source, what it adds, and its share of the variance; and what can be done about the largest. */
export function Budget({ quantity }: { quantity: Quantity }): ReactElement {
  const { pointing, calibration } = useMeasured(useSettledDocument());
  const { cornerPx } = radialShiftOf(useWork().sheet.photo, 0);
  const advice = budgetAdvice(quantity, pointing !== undefined);
  const suffix = quantity.unit === 'mm' ? ' mm' : '';
  const factor = quantity.estimate.coverageFactor ?? COVERAGE_FACTOR;
  return (
    <>
      <table className={style['budget']}>
        <thead>
          <tr>
            <th scope="col">Source</th>
            <th scope="col">± (k = {coverageInWords(quantity.estimate)})</th>
            <th scope="col">Share</th>
          </tr>
        </thead>
        <tbody>
          {quantity.budget
            .toSorted((one, other) => other.share - one.share)
            .map(({ source, standardUncertainty, share }) => (
              <tr key={source}>
                <th scope="row">{capitalized(BUDGET_LABELS[source])}</th>
                <td className="figures">
                  {(factor * standardUncertainty).toPrecision(2)}
                  {suffix}
                </td>
                <td className="figures">{(100 * share).toFixed(0)} %</td>
              </tr>
            ))}
        </tbody>
        {quantity.heightCorrection !== null && (
          <tfoot>
            <tr>
              <td colSpan={3}>
                Corrected for height by {quantity.heightCorrection < 0 ? '−' : '+'}
                {Math.abs(quantity.heightCorrection).toPrecision(2)}
                {suffix}
              </td>
            </tr>
          </tfoot>
        )}
      </table>
      {calibration?.ok && quantity.budget.some(({ source }) => source === 'distortion') && (
        <p className={style['note']}>Distortion of the lens. {lensInWords(calibration.value.lens, cornerPx)}</p>
      )}
      {advice !== null && <p className={style['note']}>To narrow it: {advice}</p>}
    </>
  );
}
