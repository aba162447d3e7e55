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
  const [barAMm, setBarAMm] = useState<number | null>(null);
  const [barBMm, setBarBMm] = useState<number | null>(null);
  const today = about.data?.today;
  const isComplete = today !== undefined && printer.trim() !== '' && barAMm !== null && barBMm !== null;
  const send = () => {
    if (today === undefined || barAMm === null || barBMm === null) return;
    keep.mutate(
      {
        body: {
          printer,
          barAMm,
          barBMm,
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
          Two bars on the card are drawn {CHECK_BAR_MM} mm long: A lies along the card, below the markers; B stands upright beside the gray
          steps. Read both with a caliper, to 0.05 mm. Printers are often off by one or two percent, and not by the same in both directions.
        </p>
        <TextField label="Printer" value={printer} onChange={setPrinter} maxLength={200} required />
        <div className={style['pair']}>
          <NumberField label="Bar A, mm" value={barAMm} least={CHECK_BAR_MM / 2} most={2 * CHECK_BAR_MM} atOnce onChange={setBarAMm} />
          <NumberField label="Bar B, mm" value={barBMm} least={CHECK_BAR_MM / 2} most={2 * CHECK_BAR_MM} atOnce onChange={setBarBMm} />
        </div>
        {keep.isError && <FailureNotice error={keep.error} />}
      </div>
    </Dialog>
  );
}
