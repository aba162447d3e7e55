import { type ReactElement, useState } from 'react';
import type { PointsScale } from '../../../../domain/measuring/calibration.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { withPrintCheck } from '../../../../domain/scaleCard/printCheck.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { RemoveDialog } from '../../../removing/RemoveDialog.tsx';
import style from '../panel.module.css';
import { MeasurePrinter } from './MeasurePrinter.tsx';

interface Props {
  marks: PointsScale;
  onChange: (marks: PointsScale) => void;
}

const UNCHECKED = '';

/** How true the printer drew our card: what a caliper read on its check bars, or what any printer may be off by. */
export function PrintedCard({ marks, onChange }: Props): ReactElement {
  const checks = useAnswer('GET /api/print-checks', {});
  const [open, setOpen] = useState<'measure' | 'remove' | null>(null);
  const known = checks.data ?? [];
  const used = marks.printCheck;
  const isKnown = used !== null && known.some(({ id }) => id === used.id);
  const options = [
    { value: UNCHECKED, label: 'None: any printer' },
    ...known.map(({ id, printer, checkedOn }) => ({ value: id, label: `${printer}, ${dayInWords(checkedOn)}` })),
    // A check that was removed since: the marks keep its figures.
    ...(used !== null && checks.isSuccess && !isKnown ? [{ value: used.id, label: `${used.printer}, ${dayInWords(used.checkedOn)}` }] : []),
  ];
  const choose = (id: string) => {
    const check = known.find((candidate) => candidate.id === id);
    if (check !== undefined) onChange(withPrintCheck(marks, check));
    else if (id === UNCHECKED) onChange(withPrintCheck(marks, null));
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
        <Button onClick={() => setOpen('measure')}>Measure a printed card</Button>
        {isKnown && (
          <Button kind="quiet" onClick={() => setOpen('remove')}>
            Remove this check
          </Button>
        )}
      </div>
      {open === 'measure' && (
        <MeasurePrinter
          onClose={() => setOpen(null)}
          onKept={(check) => {
            setOpen(null);
            onChange(withPrintCheck(marks, check));
          }}
        />
      )}
      {open === 'remove' && used !== null && (
        <RemoveDialog
          kind="print-check"
          id={used.id}
          what={`the print check of ${used.printer} of ${dayInWords(used.checkedOn)}`}
          note="The card in this photo goes back to no check. Other photos that use it keep its figures until another is chosen there."
          onClose={() => setOpen(null)}
          onRemoved={() => onChange(withPrintCheck(marks, null))}
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
