import { useCallback } from 'react';
import type { Failure } from '../../../domain/failure.ts';
import { wordsFor } from '../../../words/failures.ts';
import { useToast } from '../../parts/Toast.tsx';
import type { Work } from './work.ts';

/** For marks that the archive refuses once nobody is at the Bench any more: says so in whichever room, and offers to try again. */
export function useUnsavedMarks(): (work: Work, failure: Failure) => void {
  const toast = useToast();
  return useCallback(
    (work, failure) => {
      const tell = (refused: Failure) => {
        const { happened, advice } = wordsFor(refused);
        toast({
          message: `The last marks on ${work.sheet.photo.originalName} are not saved. ${happened} ${advice}`,
          action: { label: 'Save again', run: tryAgain },
        });
      };
      const tryAgain = () => {
        work.saver.retry();
        void work.saver.quiet().then(() => {
          const { state } = work.saving.getState();
          if (state.kind === 'refused') tell(state.failure);
          else toast({ message: `The marks on ${work.sheet.photo.originalName} are saved.` });
        });
      };
      tell(failure);
    },
    [toast],
  );
}
