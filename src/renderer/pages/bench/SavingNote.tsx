import type { ReactElement } from 'react';
import { useStore } from 'zustand';
import { wordsFor } from '../../../words/failures.ts';
import { putBack } from '../../bench/deeds/travel.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import style from './BenchBar.module.css';
import { useBench, useScaleTrouble, useWork } from './useWork.ts';

/** Whether what stands on the page stands in the archive, and what to do where it does not. */
export function SavingNote(): ReactElement {
  const { saving, saver, bench, refused } = useWork();
  const { state, displaced } = useStore(saving);
  const holdsRefused = useStore(refused, (fields) => fields.size > 0);
  const trouble = useScaleTrouble();
  const marked = useBench((state) => state.edited.document.scale?.kind);
  return (
    <>
      <p
        className={`${style['saving']} ${state.kind === 'waiting' || state.kind === 'refused' || holdsRefused ? style['unsent'] : ''}`}
        role="status"
        data-saving={state.kind}
      >
        {state.kind === 'saved' && displaced !== null && 'Your last change is not saved'}
        {state.kind === 'saved' && displaced === null && savedInWords(trouble, marked === 'rectangle', holdsRefused)}
        {state.kind === 'saving' && 'Saving …'}
        {state.kind === 'waiting' && 'Not saved yet: Exuviary does not answer. Trying again by itself.'}
        {state.kind === 'refused' && wordsFor(state.failure).happened}
      </p>
      {state.kind === 'refused' && (
        <Button kind="quiet" title={wordsFor(state.failure).advice} onClick={() => saver.retry()}>
          Save again
        </Button>
      )}
      {displaced !== null && (
        <Dialog
          title="Changed somewhere else meanwhile"
          onClose={() => saving.setState({ displaced: null })}
          foot={
            <>
              <Button onClick={() => saving.setState({ displaced: null })}>Go on with what is stored</Button>
              <Button
                kind="primary"
                onClick={() => {
                  putBack(bench, displaced);
                  saving.setState({ displaced: null });
                }}
              >
                Put my marks back
              </Button>
            </>
          }
        >
          <p>
            Another window changed the marks of this photo. Its state has been loaded and is shown now; your last change was not saved. Your
            marks are kept here: put them back over the stored ones, which can be undone, or go on with what is stored.
          </p>
        </Dialog>
      )}
    </>
  );
}

function savedInWords(trouble: ReturnType<typeof useScaleTrouble>, hasCorners: boolean, holdsRefused: boolean): string {
  if (trouble !== null) return `All saved but the scale: ${troubleInWords(trouble, hasCorners)}`;
  return holdsRefused ? 'Not saved: a field holds what cannot be its figure' : 'All saved';
}

function troubleInWords(trouble: 'unfinished' | 'impossible' | 'check', hasCorners: boolean): string {
  if (trouble === 'check') return 'the second object cannot be right';
  if (trouble === 'unfinished') return 'it needs all its points first';
  return hasCorners ? 'its corners cannot be right' : 'its marks cannot be right';
}
