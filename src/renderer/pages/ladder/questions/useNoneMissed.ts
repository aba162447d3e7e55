import type { Molt } from '../../../../domain/molting/molt.ts';
import { withOutcome } from '../../../../domain/molting/outcomes.ts';
import { useChange } from '../../../client/queries.ts';
import { useToast } from '../../../parts/Toast.tsx';

export interface NoneMissed {
  readonly busy: boolean;
  readonly error: Error | null;
  /** Whether the molt can be said anything of: its record may not have been had. */
  readonly knows: (moltId: string) => boolean;
  /** @param sure that no molt went by unseen before this one. */
  readonly say: (moltId: string, sure: boolean) => void;
}

/** The keeper's word that no molt was missed before one, kept with that molt. */
export function useNoneMissed(molts: readonly Molt[], afterwards: () => void): NoneMissed {
  const change = useChange('PUT /api/molts/{moltId}');
  const toast = useToast();
  return {
    busy: change.isPending,
    error: change.error,
    knows: (moltId) => molts.some(({ id }) => id === moltId),
    say: (moltId, sure) => {
      const molt = molts.find(({ id }) => id === moltId);
      if (!molt) return;
      const { happenedFrom, happenedTo, instarShed, position, outcomes, notes, version } = molt;
      const body = { happenedFrom, happenedTo, instarShed, position, notes, outcomes: withOutcome(outcomes, 'none-missed-before', sure) };
      change.mutate(
        { path: { moltId }, version, body },
        {
          onSuccess: () => {
            toast({ message: sure ? 'Kept with the molt: none was missed before it.' : 'The question is asked again.' });
            afterwards();
          },
        },
      );
    },
  };
}
