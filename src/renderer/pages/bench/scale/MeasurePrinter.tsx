import { type ReactElement, useState } from 'react';
import { CHECK_BAR_MM } from '../../../../domain/scaleCard/layout.ts';
import { CALIPER_STANDARD_UNCERTAINTY_MM, type PrintCheck } from '../../../../domain/scaleCard/printCheck.ts';
import { useAnswer, useChange } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { TextField } from '../../../parts/TextField.tsx';
import { NumberField } from '../NumberField.tsx';
import style from '../panel.module.css';

interface Props {
  onClose: () => void;
  onKept: (check: PrintCheck) => void;
}

/** The two check bars of a printed card, read with a caliper: once for each printer. */
export function MeasurePrinter({ onClose, onKept }: Props): ReactElement {
  const about = useAnswer('GET /api/about', {});
  const keep = useChange('POST /api/print-checks');
  const [printer, setPrinter] = useState('');
  const [acrossMm, setAcrossMm] = useState<number | null>(null);
  const [downMm, setDownMm] = useState<number | null>(null);
  const today = about.data?.today;
  const isComplete = today !== undefined && printer.trim() !== '' && acrossMm !== null && downMm !== null;
  const send = () => {
    if (today === undefined || acrossMm === null || downMm === null) return;
    keep.mutate(
      {
        body: {
          printer,
          acrossMm,
          downMm,
          readingStandardUncertaintyMm: CALIPER_STANDARD_UNCERTAINTY_MM,
          checkedOn: today,
        },
      },
      { onSuccess: onKept },
    );
  };
  return (
    <Dialog
      title="Measure a printed card"
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="primary" disabled={!isComplete || keep.isPending} onClick={send}>
            Keep for this printer
          </Button>
        </>
      }
    >
      <div className={style['panel']}>
        <p>
          Two bars on the card are drawn {CHECK_BAR_MM} mm long. Read both with a caliper, to 0.05 mm. Printers are often off by one or two
          percent, and not the same along and across.
        </p>
        <TextField label="Printer" value={printer} onChange={setPrinter} maxLength={200} required />
        <div className={style['pair']}>
          <NumberField
            label="Bar along the card, mm"
            value={acrossMm}
            least={CHECK_BAR_MM / 2}
            most={2 * CHECK_BAR_MM}
            atOnce
            onChange={setAcrossMm}
          />
          <NumberField
            label="Bar across the card, mm"
            value={downMm}
            least={CHECK_BAR_MM / 2}
            most={2 * CHECK_BAR_MM}
            atOnce
            onChange={setDownMm}
          />
        </div>
        {keep.isError && <FailureNotice error={keep.error} />}
      </div>
    </Dialog>
  );
}
