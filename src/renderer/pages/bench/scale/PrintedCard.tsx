import { type ReactElement, useState } from 'react';
import type { PointsScale } from '../../../../domain/measuring/calibration.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { withPrintCheck } from '../../../../domain/scaleCard/printCheck.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { MeasurePrinter } from './MeasurePrinter.tsx';

const UNCHECKED = '';

/** How true the printer drew our card: what a caliper read on its check bars, or what any printer may be off by. */
export function PrintedCard({ marks }: { marks: PointsScale }): ReactElement {
  const { bench } = useWork();
  const checks = useAnswer('GET /api/print-checks', {});
  const [measures, setMeasures] = useState(false);
  const known = checks.data ?? [];
  const used = marks.printCheck;
  const options = [
    { value: UNCHECKED, label: 'Not measured: any printer' },
    ...known.map(({ id, printer, checkedOn }) => ({ value: id, label: `${printer}, ${dayInWords(checkedOn)}` })),
    // A check that was forgotten since: the marks keep its figures.
    ...(used !== null && checks.isSuccess && !known.some(({ id }) => id === used.id)
      ? [{ value: used.id, label: `${used.printer}, ${dayInWords(used.checkedOn)}` }]
      : []),
  ];
  const choose = (id: string) => {
    const check = known.find((candidate) => candidate.id === id);
    if (check !== undefined) changeScale(bench, withPrintCheck(marks, check));
    else if (id === UNCHECKED) changeScale(bench, withPrintCheck(marks, null));
  };
  const { xFactor, yFactor, relativeStandardUncertainty } = marks.print;
  return (
    <div>
      {checks.isLoadingError && <FailureNotice error={checks.error} />}
      <Select label="Printer" value={used?.id ?? UNCHECKED} options={options} onChange={choose} />
      <p className={`${style['soft']} figures`}>
        Prints {percentInWords(xFactor)} along the card and {percentInWords(yFactor)} across it, known to ±{' '}
        {(100 * COVERAGE_FACTOR * relativeStandardUncertainty).toFixed(1)} %.
      </p>
      <Button onClick={() => setMeasures(true)}>Measure a printed card</Button>
      {measures && (
        <MeasurePrinter
          onClose={() => setMeasures(false)}
          onKept={(check) => {
            setMeasures(false);
            changeScale(bench, withPrintCheck(marks, check));
          }}
        />
      )}
    </div>
  );
}

function percentInWords(factor: number): string {
  const percent = 100 * (factor - 1);
  if (Math.abs(percent) < 0.05) return 'true to size';
  return `${Math.abs(percent).toFixed(1)} % too ${percent < 0 ? 'small' : 'large'}`;
}
