import { type ReactElement, useMemo } from 'react';
import { lensCorrections } from '../../../../domain/measuring/lens/lensCorrection.ts';
import { COVERAGE_FACTOR, type Quantity } from '../../../../domain/measuring/quantity.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { coverageInWords } from '../../../../words/estimates.ts';
import { BUDGET_LABELS, capitalized } from '../../../../words/labels.ts';
import { NOT_CORRECTED } from '../../../../words/lens.ts';
import { shareInWords } from '../../../../words/quantities.ts';
import { placedScaleOf, readingDraftOf } from '../../../bench/document.ts';
import { useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import style from './Budget.module.css';
import { budgetAdvice } from './budgetAdvice.ts';

/** A smaller correction is only called small. */
const LEAST_TOLD = 0.001;

/** Where the uncertainty comes from (JCGM 100:2008, 7.2.7): each source, what it adds, and its share of the variance; and what can be done about the largest. */
export function Budget({ quantity }: { quantity: Quantity }): ReactElement {
  const { pass, sheet } = useWork();
  const document = useSettledDocument();
  const { calibration, measurement } = useMeasured(document);
  const lensCorrection = useMemo(() => {
    const marks = placedScaleOf(document);
    if (marks === undefined || !calibration?.ok || measurement === null) return undefined;
    return lensCorrections(readingDraftOf(document, pass), marks, sheet.photo, calibration.value, measurement, shownOn(sheet.photo)).get(
      quantity.name,
    );
  }, [document, pass, sheet.photo, calibration, measurement, quantity.name]);
  const advice = budgetAdvice(quantity);
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
                <td className="figures">{shareInWords(share)}</td>
              </tr>
            ))}
        </tbody>
        <tfoot>
          {quantity.heightCorrection !== null && <Corrected what="height" by={quantity.heightCorrection} suffix={suffix} />}
          {lensCorrection !== undefined && <Corrected what="the lens" by={lensCorrection} suffix={suffix} />}
        </tfoot>
      </table>
      {calibration?.ok && !calibration.value.lens.isCorrected && quantity.budget.some(({ source }) => source === 'distortion') && (
        <p className={style['note']}>Distortion of the lens. {NOT_CORRECTED[calibration.value.lens.reason]}</p>
      )}
      {advice !== null && <p className={style['note']}>To narrow it: {advice}</p>}
    </>
  );
}

function Corrected({ what, by, suffix }: { what: string; by: number; suffix: string }): ReactElement {
  return (
    <tr>
      <td colSpan={3}>
        Corrected for {what} by{' '}
        {Math.abs(by) < LEAST_TOLD ? `less than ${LEAST_TOLD}` : `${by < 0 ? '−' : '+'}${Math.abs(by).toPrecision(2)}`}
        {suffix}
      </td>
    </tr>
  );
}
