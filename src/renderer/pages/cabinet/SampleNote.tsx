import type { ReactElement } from 'react';
import { useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { useRemovals } from '../../removing/RemovedProvider.tsx';
import style from './SampleNote.module.css';

/** Nobody may take the sample for real: says so as long as it is here, and offers to remove it. */
export function SampleNote(): ReactElement {
  const remove = useChange('DELETE /api/sample-cabinet');
  const { announce } = useRemovals();
  return (
    <>
      <Notice>
        <span className={style['note']}>
          <span>The animals marked "sample" are invented, and so is every number about them.</span>
          <Button
            kind="quiet"
            busy={remove.isPending}
            onClick={() =>
              remove.mutate({}, { onSuccess: ({ id }) => announce({ removalId: id, message: 'The sample cabinet was removed.' }) })
            }
          >
            Remove the sample
          </Button>
        </span>
      </Notice>
      {remove.error && <FailureNotice error={remove.error} />}
    </>
  );
}
