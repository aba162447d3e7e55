import { wordsForError } from '../../words/failures.ts';
import { useChange } from '../client/queries.ts';
import { useToast } from '../parts/Toast.tsx';

/** After a removal: says what was removed and offers to put it back, until the archive is closed or the next message comes. */
export function useUndoToast(): (removalId: string, message: string) => void {
  const toast = useToast();
  const restore = useChange('POST /api/removals/{removalId}/restoration');
  return (removalId, message) =>
    toast({
      message,
      action: {
        label: 'Undo',
        // The promise rather than callbacks of mutate: those are dropped once the page that removed something is gone.
        run: () => {
          restore.mutateAsync({ path: { removalId } }).then(
            () => toast({ message: 'Put back as it was.' }),
            (error: unknown) => toast({ message: `${wordsForError(error).happened} ${wordsForError(error).advice}` }),
          );
        },
      },
    });
}
