import { type ReactElement, useState } from 'react';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import { sexInWords } from '../../../../words/sex.ts';
import { useChange } from '../../../client/queries.ts';
import { FormDialog } from '../../../forms/FormDialog.tsx';
import { WholeRow } from '../../../forms/WholeRow.tsx';
import { Field } from '../../../parts/Field.tsx';
import { useToast } from '../../../parts/Toast.tsx';

/** Withdraws a determination, for a reason that stays beside it. */
export function WithdrawDialog({ determination, onClose }: { determination: Determination; onClose: () => void }): ReactElement {
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const withdraw = useChange('POST /api/determinations/{determinationId}/withdrawal');
  const toast = useToast();
  const words = sexInWords({ sex: determination.sex, level: determination.level, conflict: false });

  const save = () => {
    setTried(true);
    if (reason.trim() === '') return;
    withdraw.mutate(
      { path: { determinationId: determination.id }, body: { reason } },
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
        <Field
          label="Why?"
          hint="It stays on record with this reason and no longer counts. This cannot be taken back; a new determination can be signed."
          error={tried && reason.trim() === '' ? 'A reason is needed: others will read this record.' : undefined}
        >
          {(control) => <textarea {...control} maxLength={2_000} value={reason} onChange={(event) => setReason(event.target.value)} />}
        </Field>
      </WholeRow>
    </FormDialog>
  );
}
