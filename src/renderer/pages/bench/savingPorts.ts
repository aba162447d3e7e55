import type { QueryClient } from '@tanstack/react-query';
import type { SavingPorts } from '../../bench/saver.ts';
import { type Dispatch, type Stored, scaleOf } from '../../bench/saving.ts';
import { ask } from '../../client/ask.ts';
import type { ChangeKey } from '../../client/touched.ts';
import { READS_TOUCHED_BY } from '../../client/touched.ts';
import { isInHand, type Pass, storedReading } from './pass.ts';

/** How the Bench reaches the archive, for one pass over one photo. */
export function savingPorts(photoId: string, pass: Pass, client: QueryClient): SavingPorts {
  const touched = (key: ChangeKey) => Promise.all(READS_TOUCHED_BY[key].map((read) => client.invalidateQueries({ queryKey: [read] })));

  async function send(dispatch: Dispatch): Promise<{ id: string; version: number }> {
    switch (dispatch.kind) {
      case 'save-scale': {
        const { version } = dispatch;
        const key = 'PUT /api/photos/{photoId}/calibration';
        const record = await ask(key, { path: { photoId }, body: scaleOf(dispatch), version });
        void touched(key);
        return { id: photoId, version: record.version };
      }
      case 'begin-reading': {
        const key = 'POST /api/photos/{photoId}/readings';
        const reading = await ask(key, { path: { photoId }, body: dispatch.draft });
        void touched(key);
        return reading;
      }
      case 'save-reading': {
        const { id, draft, version } = dispatch;
        const key = 'PUT /api/readings/{readingId}';
        const reading = await ask(key, { path: { readingId: id }, body: draft, version });
        void touched(key);
        return reading;
      }
    }
  }

  async function reload(after: Dispatch): Promise<Stored> {
    const { calibration, readings } = await ask('GET /api/photos/{photoId}/bench', { path: { photoId } });
    const knownId = after.kind === 'save-reading' ? after.id : pass.reading?.id;
    const ours = readings.find((reading) => (knownId === undefined ? isInHand(reading, pass) : reading.id === knownId));
    return {
      scale: { ...scaleOf(calibration), version: calibration.version },
      reading: ours === undefined ? null : asBegun(storedReading(ours)),
    };
  }

  /** Under the number this page began it with: the archive gives another where that was taken, and keeps it. */
  function asBegun({ draft, ...stored }: NonNullable<Stored['reading']>): NonNullable<Stored['reading']> {
    return { ...stored, draft: { ...draft, pass: pass.pass } };
  }

  return { send, reload, pause };
}

/** Waits, but no longer than until the machine is connected again or the page is looked at again. */
function pause(ms: number): Promise<void> {
  return new Promise((resolve) => {
    const stop = new AbortController();
    const end = () => {
      stop.abort();
      clearTimeout(timer);
      resolve();
    };
    const timer = setTimeout(end, ms);
    addEventListener('online', end, { signal: stop.signal });
    document.addEventListener('visibilitychange', end, { signal: stop.signal });
  });
}
