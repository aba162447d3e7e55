import { useState } from 'react';
import type { GapOnRecord } from '../../../../domain/growth/missed/gap.ts';
import type { MissedMoltCheck } from '../../../../domain/growth/missed/missedMolts.ts';
import { reversed } from '../../../../domain/molting/renumbering.ts';
import { useChange } from '../../../client/queries.ts';

export interface Gaps {
  /** The gap put on record last, for as long as the page is open. */
  readonly accepted: GapOnRecord | null;
  readonly busy: boolean;
  readonly error: Error | null;
  accept(check: MissedMoltCheck): void;
  undo(): void;
}

/** Puts suggested gaps on record, by numbers or as presumed molts, and takes the last one back. */
export function useGaps(specimenId: string): Gaps {
  const insert = useChange('POST /api/specimens/{specimenId}/gaps');
  const renumber = useChange('POST /api/specimens/{specimenId}/renumberings');
  const remove = useChange('DELETE /api/molts/{moltId}');
  const [accepted, setAccepted] = useState<GapOnRecord | null>(null);
  const removeInTurn = ([moltId, ...rest]: readonly string[]): void => {
    setAccepted(moltId === undefined ? null : { kind: 'presumed', moltIds: [moltId, ...rest] });
    if (moltId !== undefined) remove.mutate({ path: { moltId } }, { onSuccess: () => removeInTurn(rest) });
  };
  return {
    accepted,
    busy: insert.isPending || renumber.isPending || remove.isPending,
    error: insert.error ?? renumber.error ?? remove.error,
    accept: ({ laterMoltId, suggestedSkipped }) => {
      renumber.reset();
      remove.reset();
      insert.mutate(
        { path: { specimenId }, body: { beforeMoltId: laterMoltId, skipped: suggestedSkipped } },
        { onSuccess: (gap) => setAccepted(gap) },
      );
    },
    undo: () => {
      if (!accepted) return;
      insert.reset();
      if (accepted.kind === 'presumed') removeInTurn(accepted.moltIds);
      else renumber.mutate({ path: { specimenId }, body: reversed(accepted.renumbering) }, { onSuccess: () => setAccepted(null) });
    },
  };
}
