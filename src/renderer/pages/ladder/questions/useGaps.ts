import { useState } from 'react';
import type { MissedMoltCheck } from '../../../../domain/growth/missed/missedMolts.ts';
import { type Renumbering, reversed } from '../../../../domain/molting/renumbering.ts';
import { useChange } from '../../../client/queries.ts';

export interface Gaps {
  /** The gap put on record last, for as long as the page is open. */
  readonly accepted: Renumbering | null;
  readonly busy: boolean;
  readonly error: Error | null;
  accept(check: MissedMoltCheck): void;
  undo(): void;
}

/** Puts suggested gaps on record by renumbering, and takes the last one back. */
export function useGaps(specimenId: string): Gaps {
  const insert = useChange('POST /api/specimens/{specimenId}/gaps');
  const renumber = useChange('POST /api/specimens/{specimenId}/renumberings');
  const [accepted, setAccepted] = useState<Renumbering | null>(null);
  return {
    accepted,
    busy: insert.isPending || renumber.isPending,
    error: insert.error ?? renumber.error,
    accept: ({ laterMoltId, suggestedSkipped }) => {
      renumber.reset();
      insert.mutate(
        { path: { specimenId }, body: { beforeMoltId: laterMoltId, skipped: suggestedSkipped } },
        { onSuccess: (renumbering) => setAccepted(renumbering) },
      );
    },
    undo: () => {
      if (!accepted) return;
      insert.reset();
      renumber.mutate({ path: { specimenId }, body: reversed(accepted) }, { onSuccess: () => setAccepted(null) });
    },
  };
}
