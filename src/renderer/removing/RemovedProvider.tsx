import { createContext, type ReactElement, type ReactNode, useContext, useState } from 'react';
import { wordsForError } from '../../words/failures.ts';
import { useChange } from '../client/queries.ts';
import { useToast } from '../parts/Toast.tsx';
import { putBackInWords } from './removalWords.ts';

/** One removal that can still be undone. */
export interface Removed {
  readonly removalId: string;
  /** What was removed, as a sentence. */
  readonly message: string;
  /** For a page that shows its own copy of what came back. */
  readonly onRestored?: () => void;
}

interface Removals {
  /** Says what was removed and offers to put it back at once; after that it waits in the list of the settings. */
  announce(removed: Removed): void;
  /** @throws what the archive refuses. */
  putBack(removalId: string): Promise<void>;
}

const RemovalsContext = createContext<Removals | null>(null);

export function useRemovals(): Removals {
  const removals = useContext(RemovalsContext);
  if (!removals) throw new Error('Expected a RemovedProvider above but found none.');
  return removals;
}

/** Takes removals back: each can be put back until the archive is closed, from the message of the moment or from the list. */
export function RemovedProvider({ children }: { children: ReactNode }): ReactElement {
  const [announced, setAnnounced] = useState<readonly Removed[]>([]);
  const restore = useChange('POST /api/removals/{removalId}/restoration');
  const toast = useToast();

  const putBack = async (removalId: string, onRestored = announced.find((one) => one.removalId === removalId)?.onRestored) => {
    // The promise rather than callbacks of mutate: those are dropped when a second one is put back meanwhile.
    const restoration = await restore.mutateAsync({ path: { removalId } });
    toast({ message: putBackInWords(restoration) });
    onRestored?.();
  };
  const undo = (one: Removed) => {
    putBack(one.removalId, one.onRestored).catch((error: unknown) => {
      const { happened, advice } = wordsForError(error);
      toast({ message: `${happened} ${advice}` });
    });
  };
  const announce = (one: Removed) => {
    setAnnounced((before) => [...before, one]);
    toast({ message: one.message, action: { label: 'Undo', run: () => undo(one) } });
  };
  return <RemovalsContext value={{ announce, putBack: (removalId) => putBack(removalId) }}>{children}</RemovalsContext>;
}
