import type { ReactElement } from 'react';
import { useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { useUndoToast } from '../../removing/useUndoToast.ts';
import style from './SampleNote.module.css';

/** Nobody may take the sample for real: says so as long as it is here, and offers to remove it. */
export function SampleNote(): ReactElement {
  const remove = useChange('DELETE /api/sample-cabinet');
  const offerUndo = useUndoToast();
  return (
    <>
      <Notice>
        <span className={style['note']}>
          <span>The animals marked "sample" are invented, and so is every number about them.</span>
          <Button
            kind="quiet"
            busy={remove.isPending}
            onClick={() => remove.mutate({}, { onSuccess: (removal) => offerUndo(removal.id, 'The sample cabinet was removed.') })}
          >
            Remove the sample
          </Button>
        </span>
      </Notice>
      {remove.error && <FailureNotice error={remove.error} />}
    </>
  );
}
