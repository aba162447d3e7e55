import type { ReactElement } from 'react';
import { useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { useRemovals } from '../../removing/RemovedProvider.tsx';

/** Takes a molt that nobody saw out of the row again: nothing was recorded of it. */
export function TakeOut({ moltId }: { moltId: string }): ReactElement {
  const remove = useChange('DELETE /api/molts/{moltId}');
  const { announce } = useRemovals();
  const takeOut = () =>
    remove.mutate(
      { path: { moltId } },
      { onSuccess: ({ id }) => announce({ removalId: id, message: 'The presumed molt is taken out of the row.' }) },
    );
  return (
    <>
      <Button kind="quiet" icon="undo" busy={remove.isPending} onClick={takeOut}>
        Take it out
      </Button>
      {remove.error && <FailureNotice error={remove.error} />}
    </>
  );
}
