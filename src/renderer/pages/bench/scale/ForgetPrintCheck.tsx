import type { ReactElement } from 'react';
import type { PointsScale } from '../../../../domain/measuring/calibration.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { useChange } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';

interface Props {
  check: NonNullable<PointsScale['printCheck']>;
  onClose: () => void;
  onForgotten: () => void;
}

/** Asks before a print check is taken away for good, as one that was mistyped should be. */
export function ForgetPrintCheck({ check, onClose, onForgotten }: Props): ReactElement {
  const forget = useChange('DELETE /api/print-checks/{printCheckId}');
  return (
    <Dialog
      title={`Forget the check of ${check.printer}?`}
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Keep it</Button>
          <Button
            kind="danger"
            icon="remove"
            busy={forget.isPending}
            onClick={() => forget.mutate({ path: { printCheckId: check.id } }, { onSuccess: onForgotten })}
          >
            Forget it
          </Button>
        </>
      }
    >
      <div className={style['panel']}>
        <p>
          What was read on {dayInWords(check.checkedOn)} is offered for no card any more. This cannot be undone; the card can be measured
          again.
        </p>
        <p>The card in this photo goes back to no check. Other photos that use it keep its figures until another is chosen there.</p>
        {forget.isError && <FailureNotice error={forget.error} />}
      </div>
    </Dialog>
  );
}
