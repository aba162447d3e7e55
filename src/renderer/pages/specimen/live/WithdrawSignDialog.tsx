import { type ReactElement, useState } from 'react';
import type { LiveSign } from '../../../../domain/sexing/live/liveSign.ts';
import { findingInWords } from '../../../../words/liveSigns.ts';
import { useChange } from '../../../client/queries.ts';
import { FormDialog } from '../../../forms/FormDialog.tsx';
import { WholeRow } from '../../../forms/WholeRow.tsx';
import { TextField } from '../../../parts/TextField.tsx';
import { useToast } from '../../../parts/Toast.tsx';

/** Withdraws a sign of the animal, for a reason that stays beside it. */
export function WithdrawSignDialog({ sign, onClose }: { sign: LiveSign; onClose: () => void }): ReactElement {
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const withdraw = useChange('POST /api/live-signs/{liveSignId}/withdrawal');
  const toast = useToast();
  const words = findingInWords(sign.finding);
  const save = () => {
    setTried(true);
    if (reason.trim() === '') return;
    withdraw.mutate(
      { path: { liveSignId: sign.id }, body: { reason } },
      {
        onSuccess: () => {
          toast({ message: `Withdrawn: ${words}.` });
          onClose();
        },
      },
    );
  };
  return (
    <FormDialog
      title={`Withdraw “${words}”`}
      saveLabel="Withdraw"
      busy={withdraw.isPending}
      changed={reason.trim() !== ''}
      error={withdraw.error}
      onSave={save}
      onClose={onClose}
    >
      <WholeRow>
        <TextField
          label="Why?"
          hint="It stays on record with this reason and no longer counts. This cannot be taken back; the sign can be recorded again."
          kind="lines"
          maxLength={2_000}
          error={tried && reason.trim() === '' ? 'A reason is needed: others will read this record.' : undefined}
          value={reason}
          onChange={setReason}
        />
      </WholeRow>
    </FormDialog>
  );
}
