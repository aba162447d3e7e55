import { useQueryClient } from '@tanstack/react-query';
import { type KeyboardEvent, type ReactElement, useEffect, useMemo, useRef, useState } from 'react';
import type { BenchSheet } from '../../../api/contract/bench.ts';
import { pressKey } from '../../bench/keys.ts';
import { startRefining } from '../../bench/refiner.ts';
import type { Habits } from '../../bench/store.ts';
import { ask } from '../../client/ask.ts';
import { BenchBar } from './BenchBar.tsx';
import { headLinesOf, photoInWords } from './headLines.ts';
import { KeysHelp } from './KeysHelp.tsx';
import { Panels } from './Panels.tsx';
import { PhotoCanvas } from './PhotoCanvas.tsx';
import type { Pass } from './pass.ts';
import type { PassVerbs } from './passes/Passes.tsx';
import type { OpenPicture } from './picture/picture.ts';
import { useUnsentMarks } from './UnsentMarks.tsx';
import { WorkContext } from './useWork.ts';
import style from './Workbench.module.css';
import { openWork, type Work } from './work.ts';

interface Props {
  sheet: BenchSheet;
  pass: Pass;
  /** The same pass as it was left with marks unsent; null when all is stored. */
  held: Work | null;
  /** How the hand was helped in the pass before. */
  habits: Habits;
  picture: OpenPicture;
  verbsFor: (work: Work) => PassVerbs;
}

/** The photo and beside it the three jobs: the known size, the points, the lengths. */
export function Workbench({ sheet, pass, held, habits, picture, verbsFor }: Props): ReactElement {
  const client = useQueryClient();
  const [work] = useState(() => held ?? openWork(sheet, pass, client, habits));
  const { leave, resume } = useUnsentMarks();
  useEffect(() => {
    const stop = work.start();
    resume(work);
    return () => {
      stop();
      leave(work);
    };
  }, [work, leave, resume]);
  useEffect(() => {
    const { photo } = work.sheet;
    return startRefining(work.bench, (rough, signal) =>
      ask('POST /api/photos/{photoId}/refinement', { path: { photoId: photo.id }, body: rough, signal }),
    );
  }, [work]);
  const headLines = useMemo(() => headLinesOf(sheet, pass), [sheet, pass]);

  const keyDown = (event: KeyboardEvent<HTMLElement>) => {
    const { target } = event;
    if (target instanceof HTMLElement && takesKeysItself(target)) return;
    const takesKeys = target instanceof HTMLElement && target.closest('[data-takes-keys]') !== null;
    const focus = !takesKeys ? 'elsewhere' : target instanceof HTMLCanvasElement ? 'photo' : 'point';
    const { key, shiftKey: shift, altKey: alt } = event;
    const wasMeant = pressKey(work.bench, { key, shift, alt, command: event.ctrlKey || event.metaKey, atMs: event.timeStamp, focus });
    if (wasMeant || (focus === 'photo' && key === ' ')) event.preventDefault();
  };

  // Before the photo or anything beside it was touched the focus is on the page, outside of the Bench.
  const bench = useRef<HTMLElement>(null);
  useEffect(() => {
    const keyOutside = (event: globalThis.KeyboardEvent) => {
      const { target, key, shiftKey: shift, altKey: alt, ctrlKey, metaKey } = event;
      if (key.toLowerCase() !== 'e' || ctrlKey || metaKey || event.defaultPrevented) return;
      if (!(target instanceof HTMLElement) || bench.current?.contains(target) || takesKeysItself(target)) return;
      pressKey(work.bench, { key, shift, alt, command: false, atMs: event.timeStamp, focus: 'elsewhere' });
    };
    addEventListener('keydown', keyOutside);
    return () => removeEventListener('keydown', keyOutside);
  }, [work]);

  return (
    <WorkContext value={work}>
      <section ref={bench} className={style['bench']} aria-label="Bench" onKeyDown={keyDown}>
        <BenchBar />
        <PhotoCanvas picture={picture} description={photoInWords(sheet)} />
        <Panels picture={picture} headLines={headLines} verbs={verbsFor(work)} />
        <KeysHelp />
      </section>
    </WorkContext>
  );
}

/** Fields into which letters are typed, lists that letters choose from, and dialogs; a box or a round button takes no letters. */
function takesKeysItself(target: HTMLElement): boolean {
  return target.closest('input:not([type="radio"], [type="checkbox"]), textarea, select, dialog, [contenteditable]') !== null;
}
