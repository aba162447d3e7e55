import { type ReactElement, useState } from 'react';
import type { BenchSheet } from '../../../api/contract/bench.ts';
import type { Habits } from '../../bench/store.ts';
import { ask } from '../../client/ask.ts';
import { useChange } from '../../client/queries.ts';
import { FailureNotice } from '../../parts/Notice.tsx';
import { useRemovals } from '../../removing/RemovedProvider.tsx';
import style from './BenchPage.module.css';
import { latestPass, newPass, type Pass, passOf } from './pass.ts';
import type { PassVerbs } from './passes/Passes.tsx';
import type { OpenPicture } from './picture/picture.ts';
import { type RemovedPass, RemovedPassContext } from './removedPass.ts';
import { Workbench } from './Workbench.tsx';
import type { Work } from './work.ts';

/** What lies on the bench, and the pass in hand; changing the pass takes what is stored now. */
interface Laid {
  readonly sheet: BenchSheet;
  readonly pass: Pass;
  /** Rises with each change of pass, so that every pass gets a workbench of its own. */
  readonly turn: number;
  readonly habits: Habits;
}

interface Props {
  opened: BenchSheet;
  /** The pass that was left with marks unsent, to go on with. */
  held: Work | null;
  picture: OpenPicture;
  observer: string;
}

/** One photo on the Bench with the passes over it. */
export function Bench({ opened, held, picture, observer }: Props): ReactElement {
  const [{ sheet, pass, turn, habits }, setLaid] = useState<Laid>(() => ({
    sheet: opened,
    pass: held?.pass ?? latestPass(opened, observer),
    turn: 0,
    habits: {},
  }));
  const [trouble, setTrouble] = useState<unknown>(null);
  const removeReading = useChange('DELETE /api/readings/{readingId}');
  const [removed, setRemoved] = useState<RemovedPass | null>(null);
  const { announce, putBack } = useRemovals();
  const photoId = sheet.photo.id;

  const lay = async (work: Work, choose: (now: BenchSheet) => Pass, taken: Habits = {}) => {
    const now = await ask('GET /api/photos/{photoId}/bench', { path: { photoId } });
    setTrouble(null);
    setLaid((before) => ({ sheet: now, pass: choose(now), turn: before.turn + 1, habits: { ...habitsOf(work), ...taken } }));
  };
  const afterStoring = (work: Work, act: () => Promise<void>) => {
    work.saver
      .quiet()
      .then(() => (work.saver.hasUnsent() ? undefined : act()))
      .catch(setTrouble);
  };
  const verbsFor = (work: Work): PassVerbs => ({
    open: (reading) =>
      afterStoring(work, () => lay(work, (now) => passOf(now.readings.find(({ id }) => id === reading.id) ?? reading), taskOf(work))),
    begin: () => afterStoring(work, () => lay(work, (now) => newPass(now, observer))),
    remove: () =>
      afterStoring(work, async () => {
        const now = await ask('GET /api/photos/{photoId}/bench', { path: { photoId } });
        const stored = now.readings.find(({ id }) => id === work.saver.readingId());
        if (stored === undefined) return lay(work, (then) => latestPass(then, observer));
        const removal = await removeReading.mutateAsync({ path: { readingId: stored.id } });
        await lay(work, (then) => latestPass(then, observer));
        const layAgain = () => lay(work, (then) => passOf(then.readings.find(({ id }) => id === stored.id) ?? stored));
        const restored = () => {
          setRemoved(null);
          return layAgain();
        };
        announce({
          removalId: removal.id,
          message: `Pass ${stored.pass} of ${sheet.photo.originalName} removed.`,
          onRestored: () => void restored().catch(setTrouble),
        });
        setRemoved({ pass: stored.pass, putBack: () => void putBack(removal.id).then(restored).catch(setTrouble) });
      }),
  });

  return (
    <>
      {trouble !== null && (
        <div className={style['aside']}>
          <FailureNotice error={trouble} />
        </div>
      )}
      <RemovedPassContext value={removed}>
        <Workbench
          key={turn}
          sheet={sheet}
          pass={pass}
          held={turn === 0 ? held : null}
          habits={habits}
          picture={picture}
          verbsFor={verbsFor}
        />
      </RemovedPassContext>
    </>
  );
}

function habitsOf({ bench }: Work): Habits {
  const { loupeZoom, snaps } = bench.getState();
  return { loupeZoom, snaps };
}

/** A pass that is opened to be looked at shows what the one before it showed; a new one begins at its points. */
function taskOf({ bench }: Work): Habits {
  return { task: bench.getState().task };
}
