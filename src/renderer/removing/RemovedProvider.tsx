import { createContext, type ReactElement, type ReactNode, useContext, useState } from 'react';
import { wordsForError } from '../../words/failures.ts';
import { useChange } from '../client/queries.ts';
import { useToast } from '../parts/Toast.tsx';

/** One removal that can still be undone. */
export interface Removed {
  readonly removalId: string;
  /** What was removed, as a sentence. */
  readonly message: string;
  /** For a page that shows its own copy of what came back. */
  readonly onRestored?: () => void;
}

interface Removals {
  /** Newest first. */
  readonly removed: readonly Removed[];
  /** Says what was removed and offers to put it back at once; after that it waits in the list. */
  announce(removed: Removed): void;
  putBack(removed: Removed): void;
}

const RemovalsContext = createContext<Removals | null>(null);

export function useRemovals(): Removals {
  const removals = useContext(RemovalsContext);
  if (!removals) throw new Error('Expected a RemovedProvider above but found none.');
  return removals;
}

/** Remembers what was removed since the window was opened: each can be put back until the archive is closed, in any order. */
export function RemovedProvider({ children }: { children: ReactNode }): ReactElement {
  const [removed, setRemoved] = useState<readonly Removed[]>([]);
  const restore = useChange('POST /api/removals/{removalId}/restoration');
  const toast = useToast();

  const putBack = (one: Removed) => {
    // The promise rather than callbacks of mutate: those are dropped when a second one is put back meanwhile.
    restore.mutateAsync({ path: { removalId: one.removalId } }).then(
      () => {
        setRemoved((before) => before.filter(({ removalId }) => removalId !== one.removalId));
        toast({ message: 'Put back as it was.' });
        one.onRestored?.();
      },
      (error: unknown) => toast({ message: `${wordsForError(error).happened} ${wordsForError(error).advice}` }),
    );
  };
  const announce = (one: Removed) => {
    setRemoved((before) => [one, ...before]);
    toast({ message: one.message, action: { label: 'Undo', run: () => putBack(one) } });
  };
  return <RemovalsContext value={{ removed, announce, putBack }}>{children}</RemovalsContext>;
}
