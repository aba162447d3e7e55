import { type ReactElement, useState } from 'react';
import { TextField } from '../parts/TextField.tsx';
import { FormDialog } from './FormDialog.tsx';
import { WholeRow } from './WholeRow.tsx';

interface Props {
  /** What is withdrawn, in words. */
  words: string;
  /** What can be done instead afterwards, as the end of a sentence. */
  instead: string;
  busy: boolean;
  error: unknown;
  onWithdraw: (reason: string) => void;
  onClose: () => void;
}

/** Withdraws what was signed, for a reason that stays beside it. */
export function WithdrawForm({ words, instead, busy, error, onWithdraw, onClose }: Props): ReactElement {
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const isMissing = reason.trim() === '';
  return (
    <FormDialog
      title={`Withdraw “${words}”`}
      saveLabel="Withdraw"
      busy={busy}
      changed={!isMissing}
      error={error}
      onSave={() => {
        setTried(true);
        if (!isMissing) onWithdraw(reason);
      }}
      onClose={onClose}
    >
      <WholeRow>
        <TextField
          label="Why?"
          hint={`It stays on record with this reason and no longer counts. This cannot be taken back; ${instead}.`}
          kind="lines"
          maxLength={2_000}
          error={tried && isMissing ? 'A reason is needed: others will read this record.' : undefined}
          value={reason}
          onChange={setReason}
        />
      </WholeRow>
    </FormDialog>
  );
}
