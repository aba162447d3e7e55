import { type ReactElement, useMemo, useState } from 'react';
import { type BudgetLine, budgetInDetail, correlationOf } from '../../../../domain/measuring/budget.ts';
import type { Quantity } from '../../../../domain/measuring/quantity.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { coverageInWords } from '../../../../words/estimates.ts';
import { BUDGET_LABELS, capitalized } from '../../../../words/labels.ts';
import { landmarkName } from '../../../../words/landmarks.ts';
import { shareInWords } from '../../../../words/quantities.ts';
import { readingDraftOf } from '../../../bench/document.ts';
import { useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import style from './Budget.module.css';

/** Less than this share of the variance is told together. */
const LEAST_SHARE = 0.005;

/** The budget input by input, worked out when it is asked for. */
export function BudgetInDetail({ quantity }: { quantity: Quantity }): ReactElement {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details className={style['detail']} onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>Input by input</summary>
      {isOpen && <Lines quantity={quantity} />}
    </details>
  );
}

function Lines({ quantity }: { quantity: Quantity }): ReactElement | null {
  const { pass, sheet } = useWork();
  const document = useSettledDocument();
  const { calibration, pointingOf } = useMeasured(document);
  const told = useMemo(() => {
    if (!calibration?.ok) return null;
    const draft = readingDraftOf(document, pass);
    const options = { pointing: pointingOf, shown: shownOn(sheet.photo) };
    const correlation =
      quantity.name === 'carapace-ratio' ? correlationOf(['carapace-length', 'carapace-width'], draft, calibration.value, options) : null;
    return { lines: budgetInDetail(quantity.name, draft, calibration.value, options), correlation };
  }, [document, pass, calibration, pointingOf, sheet.photo, quantity.name]);
  if (told === null) return null;
  const large = told.lines.filter(({ share }) => share >= LEAST_SHARE);
  const small = told.lines.length - large.length;
  return (
    <>
      <table className={style['budget']}>
        <thead>
          <tr>
            <th scope="col">Input</th>
            <th scope="col">u</th>
            <th scope="col">Sensitivity</th>
            <th scope="col">Share</th>
          </tr>
        </thead>
        <tbody>
          {large.map((line) => (
            <tr key={`${line.source} ${line.landmark ?? ''} ${line.contribution}`}>
              <th scope="row">{inputName(line, quantity.name)}</th>
              <td className="figures">
                {line.input === null ? '–' : `${line.input.standardUncertainty.toPrecision(2)} ${line.input.unit}`}
              </td>
              <td className="figures">{sensitivityInWords(line, quantity)}</td>
              <td className="figures">{shareInWords(line.share)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={style['note']}>
        u is the standard uncertainty of the input; times its sensitivity, and {coverageInWords(quantity.estimate)} times that, it is its
        part of ±.
        {small > 0 && ` ${small} more inputs have less than ${100 * LEAST_SHARE} % each.`}
      </p>
      {told.correlation !== null && (
        <p className={style['note']}>
          Length and width share the card and the camera: their correlation is {told.correlation.toFixed(2)}, and what they share cancels in
          their ratio.
        </p>
      )}
    </>
  );
}

function inputName({ source, landmark, input }: BudgetLine, quantity: string): string {
  const what = capitalized(BUDGET_LABELS[source]);
  if (landmark !== null) return `${what}: ${landmarkName(landmark)}`;
  if (source !== 'height') return what;
  // Without an input it is the height that could not be corrected for.
  if (input === null) return `${what}: not corrected for`;
  if (quantity.startsWith('carapace-')) return `${what}: all of the carapace`;
  return quantity.startsWith('free-') ? `${what}: the whole skin of the abdomen` : `${what}: in common`;
}

function sensitivityInWords({ input, sensitivity, contribution }: BudgetLine, { unit }: Quantity): string {
  const suffix = unit === 'mm' ? ' mm' : '';
  if (input === null || sensitivity === null) return `adds ${contribution.toPrecision(2)}${suffix}`;
  return `${sensitivity.toPrecision(2)}${suffix}/${input.unit}`;
}
