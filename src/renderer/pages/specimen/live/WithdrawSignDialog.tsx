import type { ReactElement } from 'react';
import type { LiveSign } from '../../../../domain/sexing/live/liveSign.ts';
import { findingInWords } from '../../../../words/liveSigns.ts';
import { useChange } from '../../../client/queries.ts';
import { WithdrawForm } from '../../../forms/WithdrawForm.tsx';
import { useToast } from '../../../parts/Toast.tsx';

export function WithdrawSignDialog({ sign, onClose }: { sign: LiveSign; onClose: () => void }): ReactElement {
  const withdraw = useChange('POST /api/live-signs/{liveSignId}/withdrawal');
  const toast = useToast();
  const words = findingInWords(sign.finding);
  const withdrawn = () => {
    toast({ message: `Withdrawn: ${words}.` });
    onClose();
  };
  return (
    <WithdrawForm
      words={words}
      instead="the sign can be recorded again"
      busy={withdraw.isPending}
      error={withdraw.error}
      onWithdraw={(reason) => withdraw.mutate({ path: { liveSignId: sign.id }, body: { reason } }, { onSuccess: withdrawn })}
      onClose={onClose}
    />
  );
}
