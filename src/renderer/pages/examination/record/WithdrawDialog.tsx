import type { ReactElement } from 'react';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import { sexInWords } from '../../../../words/sex.ts';
import { useChange } from '../../../client/queries.ts';
import { WithdrawForm } from '../../../forms/WithdrawForm.tsx';
import { useToast } from '../../../parts/Toast.tsx';

export function WithdrawDialog({ determination, onClose }: { determination: Determination; onClose: () => void }): ReactElement {
  const withdraw = useChange('POST /api/determinations/{determinationId}/withdrawal');
  const toast = useToast();
  const words = sexInWords({ sex: determination.sex, level: determination.level, conflict: false });
  const withdrawn = () => {
    toast({ message: `Withdrawn: ${words}.` });
    onClose();
  };
  return (
    <WithdrawForm
      words={words}
      instead="a new determination can be signed"
      busy={withdraw.isPending}
      error={withdraw.error}
      onWithdraw={(reason) => withdraw.mutate({ path: { determinationId: determination.id }, body: { reason } }, { onSuccess: withdrawn })}
      onClose={onClose}
    />
  );
}
