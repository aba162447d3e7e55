import type { ReactElement } from 'react';
import { reversed } from '../../../domain/molting/renumbering.ts';
import { counted } from '../../../words/counts.ts';
import { useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { useToast } from '../../parts/Toast.tsx';
import style from './RungTable.module.css';

interface Props {
  specimenId: string;
  /** The molt that the gap stands before. */
  moltId: string;
  words: string;
  columns: number;
  /** Whether there are numbers on both sides that the gap lies between. */
  canClose: boolean;
}

/** Instars without a molt on record, and the way to say that there are none. */
export function GapRow({ specimenId, moltId, words, columns, canClose }: Props): ReactElement {
  const close = useChange('POST /api/specimens/{specimenId}/closed-gaps');
  const renumber = useChange('POST /api/specimens/{specimenId}/renumberings');
  const toast = useToast();
  const takeOut = () =>
    close.mutate(
      { path: { specimenId }, body: { beforeMoltId: moltId } },
      {
        onSuccess: (renumbering) =>
          toast({
            message: `The gap is taken out: ${counted(renumbering.changes.length, 'molt')} got another instar number.`,
            action: { label: 'Undo', run: () => renumber.mutate({ path: { specimenId }, body: reversed(renumbering) }) },
          }),
      },
    );
  return (
    <tr className={style['gap']}>
      <td colSpan={columns}>
        {words}{' '}
        {canClose && (
          <Button kind="quiet" icon="undo" busy={close.isPending || renumber.isPending} onClick={takeOut}>
            Take this gap out
          </Button>
        )}
        {(close.error ?? renumber.error) && <FailureNotice error={close.error ?? renumber.error} />}
      </td>
    </tr>
  );
}
