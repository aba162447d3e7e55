import { type ReactElement, useState } from 'react';
import type { PointsScale } from '../../../../domain/measuring/calibration.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { type PrintCheck, withPrintCheck } from '../../../../domain/scaleCard/printCheck.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { RemoveDialog } from '../../../removing/RemoveDialog.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { MeasurePrinter } from './MeasurePrinter.tsx';

interface Props {
  marks: PointsScale;
  onChange: (marks: PointsScale) => void;
}

const UNCHECKED = '';

/** How true the printer drew our card: what a caliper read on its check bars, or what any printer may be off by. */
export function PrintedCard({ marks, onChange }: Props): ReactElement {
  const { bench } = useWork();
  const checks = useAnswer('GET /api/print-checks', {});
  const [measures, setMeasures] = useState(false);
  const [removing, setRemoving] = useState<PrintCheck | null>(null);
  const known = checks.data ?? [];
  const used = marks.printCheck;
  const usedCheck = known.find(({ id }) => id === used?.id);
  const options = [
    { value: UNCHECKED, label: 'None: any printer' },
    ...known.map(({ id, printer, checkedOn }) => ({ value: id, label: `${printer}, ${dayInWords(checkedOn)}` })),
    // A check that was removed since: the marks keep its figures.
    ...(used !== null && checks.isSuccess && usedCheck === undefined
      ? [{ value: used.id, label: `${used.printer}, ${dayInWords(used.checkedOn)}` }]
      : []),
  ];
  const choose = (id: string) => {
    const check = known.find((candidate) => candidate.id === id);
    if (check !== undefined) onChange(withPrintCheck(marks, check));
    else if (id === UNCHECKED) onChange(withPrintCheck(marks, null));
  };
  // A while may have passed: only a card that nothing else was said of meanwhile goes back to it.
  const takeAgain = (check: PrintCheck) => {
    const now = bench.getState().edited.document.scale;
    if (now?.kind === 'points' && now.object === 'scale-card' && now.printCheck === null) changeScale(bench, withPrintCheck(now, check));
  };
  const { xFactor, yFactor, relativeStandardUncertainty } = marks.print;
  const knownTo = `± ${(100 * COVERAGE_FACTOR * relativeStandardUncertainty).toFixed(1)} %`;
  return (
    <div>
      {checks.isLoadingError && <FailureNotice error={checks.error} />}
      <Select label="Print check used for this card" value={used?.id ?? UNCHECKED} options={options} onChange={choose} />
      <p className={`${style['soft']} figures`}>
        {used === null
          ? `Taken as true to size, which any printer keeps to ${knownTo} only.`
          : `Bar A was ${percentInWords(xFactor)}, bar B ${percentInWords(yFactor)}, both known to ${knownTo}. Right only for a card from this printer.`}
      </p>
      <div className={style['row']}>
        <Button onClick={() => setMeasures(true)}>Measure a printed card</Button>
        {usedCheck !== undefined && (
          <Button kind="quiet" onClick={() => setRemoving(usedCheck)}>
            Remove this check
          </Button>
        )}
      </div>
      {measures && (
        <MeasurePrinter
          onClose={() => setMeasures(false)}
          onKept={(check) => {
            setMeasures(false);
            onChange(withPrintCheck(marks, check));
          }}
        />
      )}
      {removing !== null && (
        <RemoveDialog
          kind="print-check"
          id={removing.id}
          what={`the print check of ${removing.printer} of ${dayInWords(removing.checkedOn)}`}
          note="The card in this photo goes back to no check. Other photos that use it keep its figures until another is chosen there."
          onClose={() => setRemoving(null)}
          onRemoved={() => onChange(withPrintCheck(marks, null))}
          onRestored={() => takeAgain(removing)}
        />
      )}
    </div>
  );
}

function percentInWords(factor: number): string {
  const percent = 100 * (factor - 1);
  if (Math.abs(percent) < 0.05) return 'true to size';
  return `${Math.abs(percent).toFixed(1)} % too ${percent < 0 ? 'short' : 'long'}`;
}
