import { type ReactElement, useState } from 'react';
import type { PassAgreement, SizeKind } from '../../../../domain/agreement/passes.ts';
import { smallestDetectableDifference } from '../../../../domain/agreement/technicalError.ts';
import { useAnswer } from '../../../client/queries.ts';
import { FailureNotice } from '../../../parts/Notice.tsx';
import panelStyle from '../panel.module.css';
import style from './PassesCompared.module.css';

const KIND_LABELS: Readonly<Record<SizeKind, string>> = {
  'carapace-length': 'Carapace length',
  'carapace-width': 'Carapace width',
  leg: 'Legs',
  segment: 'Segments of legs',
  span: 'Spans',
};

/** With fewer things the spread between them says nothing. */
const LEAST_THINGS_FOR_RELIABILITY = 3;

/** How well repeated passes agree, over all photos that were read more than once; asked for when it is opened. */
export function Agreement(): ReactElement {
  const [isOpen, setIsOpen] = useState(false);
  const agreement = useAnswer('GET /api/agreement', {}, { enabled: isOpen });
  return (
    <details className={style['compared']} onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>How well passes agree, on all photos</summary>
      {agreement.isLoadingError && <FailureNotice error={agreement.error} />}
      {agreement.data !== undefined && <Tables agreement={agreement.data} />}
    </details>
  );
}

function Tables({ agreement: { within, between } }: { agreement: PassAgreement }): ReactElement {
  if (within.length === 0 && between.length === 0)
    return <p className={panelStyle['soft']}>No photo with a scale has been read twice yet. A second pass over this one would tell.</p>;
  return (
    <>
      {[...Map.groupBy(within, ({ observer }) => observer)].map(([observer, rows]) => (
        <table key={observer}>
          <caption>Repeats by {named(observer)}</caption>
          <thead>
            <tr>
              <th scope="col">Sizes read again</th>
              <th scope="col">Error, mm</th>
              <th scope="col">%</th>
              <th scope="col">Reliability</th>
            </tr>
          </thead>
          <tbody className="figures">
            {rows.map(({ kind, error, things }) => (
              <tr
                key={kind}
                title={`Two readings that differ by less than ${smallestDetectableDifference(error.technicalError).toFixed(2)} mm may be of equal things.`}
              >
                <th scope="row">
                  {KIND_LABELS[kind]} ({things})
                </th>
                <td>{error.technicalError.toFixed(3)}</td>
                <td>{error.relativePercent.toFixed(2)}</td>
                <td>{error.reliability === null || things < LEAST_THINGS_FOR_RELIABILITY ? '–' : error.reliability.toFixed(3)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      {[...Map.groupBy(between, ({ first, second }) => `${named(first)} and ${named(second)}`)].map(([pair, rows]) => (
        <table key={pair}>
          <caption>{pair}, first minus second</caption>
          <thead>
            <tr>
              <th scope="col">Sizes both read</th>
              <th scope="col">Bias, mm</th>
              <th scope="col">Limits, mm</th>
            </tr>
          </thead>
          <tbody className="figures">
            {rows.map(({ kind, agreement: { bias, limits, pairs } }) => (
              <tr key={kind}>
                <th scope="row">
                  {KIND_LABELS[kind]} ({pairs})
                </th>
                <td>{signed(bias)}</td>
                <td>
                  {signed(limits.low)} to {signed(limits.high)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <p className={panelStyle['soft']}>
        Error: technical error of measurement, the standard deviation of one reading; % of the mean size. Reliability: the share of all
        differences that is not error. Limits of agreement hold 95 of 100 differences.
      </p>
    </>
  );
}

function named(observer: string): string {
  return observer === '' ? 'an observer not named' : observer;
}

function signed(mm: number): string {
  const figures = Math.abs(mm).toFixed(2);
  if (Number(figures) === 0) return figures;
  return `${mm < 0 ? '−' : '+'}${figures}`;
}
