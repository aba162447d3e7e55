import { createContext, type ReactElement, type ReactNode, useCallback, useContext, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { wordsFor } from '../../../words/failures.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import style from './UnsentMarks.module.css';
import type { Work } from './work.ts';

/**
 * Work that left the Bench before the archive had all of it. It is still being sent, whichever room is open; what another window's change
 * has displaced is held until somebody says what counts.
 */
export interface UnsentMarks {
  readonly works: readonly Work[];
  /** Called when a Bench is left; keeps what is not stored until it is. */
  leave(work: Work): void;
  /** Called when a Bench takes its work up again. */
  resume(work: Work): void;
}

const UnsentContext = createContext<UnsentMarks | null>(null);

export function useUnsentMarks(): UnsentMarks {
  const unsent = useContext(UnsentContext);
  if (unsent === null) throw new Error('Expected an UnsentMarksProvider above but found none.');
  return unsent;
}

export function UnsentMarksProvider({ children }: { children: ReactNode }): ReactElement {
  const [works, setWorks] = useState<readonly Work[]>([]);
  const resume = useCallback((work: Work) => setWorks((now) => (now.includes(work) ? now.filter((other) => other !== work) : now)), []);
  const leave = useCallback(
    (work: Work) => {
      if (!work.isHeld()) return;
      setWorks((now) => [...now.filter((other) => other !== work), work]);
      const stop = work.saving.subscribe(({ state, displaced }) => {
        if (state.kind !== 'saved' || displaced !== null) return;
        stop();
        resume(work);
      });
    },
    [resume],
  );
  const value = useMemo(() => ({ works, leave, resume }), [works, leave, resume]);
  return <UnsentContext value={value}>{children}</UnsentContext>;
}

/** In every room: marks that were left on the Bench and are still not in the archive. */
export function UnsentMarksLines(): ReactElement {
  const { works } = useUnsentMarks();
  return (
    <div role="status">
      {works.map((work) => (
        <UnsentLine key={`${work.sheet.photo.id} ${work.pass.pass}`} work={work} />
      ))}
    </div>
  );
}

function UnsentLine({ work }: { work: Work }): ReactElement | null {
  const { state, displaced } = useStore(work.saving);
  const name = work.sheet.photo.originalName;
  if (state.kind === 'waiting') {
    return (
      <p className={style['line']}>The last marks on {name} are not saved yet. Trying again by itself: keep this window open until then.</p>
    );
  }
  if (displaced !== null) {
    return (
      <p className={style['line']}>
        <span>
          Another window changed the marks on {name}. Your last ones are kept here until you say which count: keep this window open.
        </span>
        <ButtonLink to={`/bench/${work.sheet.photo.id}`} kind="quiet">
          Choose on the Bench
        </ButtonLink>
      </p>
    );
  }
  if (state.kind !== 'refused') return null;
  const { happened, advice } = wordsFor(state.failure);
  return (
    <p className={style['line']}>
      <span>
        The last marks on {name} are not saved. {happened} {advice}
      </span>
      <Button kind="quiet" onClick={() => work.saver.retry()}>
        Save again
      </Button>
    </p>
  );
}
