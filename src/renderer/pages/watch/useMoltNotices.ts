import { useEffect } from 'react';
import { useAnswer } from '../../client/queries.ts';
import { needInWords } from './needWords.ts';
import { keepNoticesTold, noticesTold } from './noticesTold.ts';

const ASKED_EVERY_MS = 60_000;

/** Whether this window can show notices on the desktop at all. */
export function canNotify(): boolean {
  return 'Notification' in window;
}

/**
 * Tells on the desktop, without a sound, when a molt under way takes longer than it should: once for each state of each molt, also
 * where the page is opened anew meanwhile.
 * Only where the keeper wanted it and the system lets us; also while the page is hidden, which is when a notice is of use.
 */
export function useMoltNotices(): void {
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const wanted = preferences?.moltNotices === true && canNotify() && Notification.permission === 'granted';
  const { data: board } = useAnswer('GET /api/watch', {}, { enabled: wanted, everyMs: ASKED_EVERY_MS, alsoHidden: true });
  useEffect(() => {
    if (!wanted || !board) return;
    const told = noticesTold(window.localStorage);
    const due = board.items.flatMap(({ need, specimenId }) =>
      need.kind === 'molting' && need.timer.state !== 'usual' && need.timer.state !== 'clock-set-back'
        ? [{ need, specimenId, tag: `${need.timer.observationId} ${need.timer.state}` }]
        : [],
    );
    for (const { need, specimenId, tag } of due) {
      if (told.has(tag)) continue;
      const animal = board.animals.find(({ specimen }) => specimen.id === specimenId)?.specimen;
      const { title, why } = needInWords(need);
      new Notification(`${animal?.code ?? ''}: ${title}`, { body: `${why} Touch and pull nothing.`, tag, silent: true });
    }
    keepNoticesTold(
      window.localStorage,
      due.map(({ tag }) => tag),
    );
  }, [wanted, board]);
}
