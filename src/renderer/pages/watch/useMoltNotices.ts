import { useEffect, useRef } from 'react';
import { useAnswer } from '../../client/queries.ts';
import { needInWords } from './needWords.ts';

const ASKED_EVERY_MS = 60_000;

/** Whether this window can show notices on the desktop at all. */
export function canNotify(): boolean {
  return 'Notification' in window;
}

/**
 * Tells on the desktop, without a sound, when a molt under way takes longer than it should: once for each state of each molt.
 * Only where the keeper wanted it and the system lets us; also while the page is hidden, which is when a notice is of use.
 */
export function useMoltNotices(): void {
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const wanted = preferences?.moltNotices === true && canNotify() && Notification.permission === 'granted';
  const { data: board } = useAnswer('GET /api/watch', {}, { enabled: wanted, everyMs: ASKED_EVERY_MS, alsoHidden: true });
  const told = useRef(new Set<string>());
  useEffect(() => {
    if (!wanted || !board) return;
    for (const { need, specimenId } of board.items) {
      if (need.kind !== 'molting' || need.timer.state === 'usual' || need.timer.state === 'clock-set-back') continue;
      const tag = `${need.timer.observationId} ${need.timer.state}`;
      if (told.current.has(tag)) continue;
      told.current.add(tag);
      const animal = board.animals.find(({ specimen }) => specimen.id === specimenId)?.specimen;
      const { title, why } = needInWords(need);
      new Notification(`${animal?.code ?? ''}: ${title}`, { body: `${why} Touch and pull nothing.`, tag, silent: true });
    }
  }, [wanted, board]);
}
