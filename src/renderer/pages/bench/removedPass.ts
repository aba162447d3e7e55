import { createContext, useContext, useEffect } from 'react';
import { useBench, useWork } from './useWork.ts';

const TAKES_KEYS_ITSELF = 'input:not([type="radio"], [type="checkbox"]), textarea, select, dialog, [contenteditable]';

/** A pass over this photo that was just removed, to be put back as the last change is undone. */
export interface RemovedPass {
  readonly pass: number;
  putBack(): void;
}

export const RemovedPassContext = createContext<RemovedPass | null>(null);

/** What undo takes back that is no change of the pass in hand: the removal of the one before it, as long as nothing was changed since. */
export function useRemovedPass(): RemovedPass | null {
  const removed = useContext(RemovedPassContext);
  const hasPast = useBench((state) => state.edited.past.length > 0);
  return hasPast ? null : removed;
}

/** Once a pass is removed its button is gone, and the focus is on the page, where no key reaches the Bench. */
export function useUndoOfRemoval(): void {
  const { bench } = useWork();
  const removed = useRemovedPass();
  useEffect(() => {
    if (removed === null) return;
    const key = (event: KeyboardEvent) => {
      const isUndo = event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey;
      if (!isUndo || (event.target instanceof HTMLElement && event.target.closest(TAKES_KEYS_ITSELF) !== null)) return;
      event.preventDefault();
      if (bench.getState().edited.pending === null) removed.putBack();
    };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, [bench, removed]);
}
