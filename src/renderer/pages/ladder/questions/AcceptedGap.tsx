import type { ReactElement } from 'react';
import { counted } from '../../../../words/counts.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../../parts/Notice.tsx';
import type { Gaps } from './useGaps.ts';

/** That a gap stands on record now, with the way back. */
export function AcceptedGap({ gaps }: { gaps: Gaps }): ReactElement {
  return (
    <>
      <Notice title="The gap is on record.">
        {counted(gaps.accepted?.changes.length ?? 0, 'molt')} got another instar number.{' '}
        <Button kind="quiet" icon="undo" busy={gaps.busy} onClick={gaps.undo}>
          Take the gap back
        </Button>
      </Notice>
      {gaps.error && <FailureNotice error={gaps.error} />}
    </>
  );
}
