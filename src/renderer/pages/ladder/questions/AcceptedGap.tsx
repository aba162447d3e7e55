import type { ReactElement } from 'react';
import type { GapOnRecord } from '../../../../domain/growth/missed/gap.ts';
import { counted } from '../../../../words/counts.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../../parts/Notice.tsx';
import type { Gaps } from './useGaps.ts';

/** That a gap stands on record now, with the way back. */
export function AcceptedGap({ accepted, gaps }: { accepted: GapOnRecord; gaps: Gaps }): ReactElement {
  return (
    <>
      <Notice title="The gap is on record.">
        {keptAs(accepted)}{' '}
        <Button kind="quiet" icon="undo" busy={gaps.busy} onClick={gaps.undo}>
          Take the gap back
        </Button>
      </Notice>
      {gaps.error && <FailureNotice error={gaps.error} />}
    </>
  );
}

function keptAs(accepted: GapOnRecord): string {
  if (accepted.kind === 'renumbered') return `${counted(accepted.renumbering.changes.length, 'molt')} got another instar number.`;
  const presumed = counted(accepted.moltIds.length, 'presumed molt');
  return accepted.moltIds.length === 1
    ? `${presumed} stands between the two skins: nobody saw it, and its days say no more than its order.`
    : `${presumed} stand between the two skins: nobody saw them, and their days say no more than their order.`;
}
