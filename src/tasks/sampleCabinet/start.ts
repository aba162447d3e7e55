import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Archive } from '../../archive/archive.ts';
import { addDays, type Instant } from '../../domain/dates.ts';
import { refuse } from '../../domain/failure.ts';
import type { TaskSnapshot } from '../../domain/intake/task.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { ShippedProfile } from '../../domain/sexing/genus/profile.ts';
import { admitPicture } from '../importing/admit.ts';
import { keepersDay } from '../localTime.ts';
import { forEachBounded } from '../pool.ts';
import type { Tasks } from '../registry.ts';
import { photosOf, SampleCabinet } from './data.ts';
import { fillSampleCabinet } from './fill.ts';
import { pictureOf } from './pictures.ts';

interface Sample {
  readonly folder: string;
  readonly genera: readonly ShippedProfile[];
  /** All days of the sample count back from here, so that it is always about today. */
  readonly now: Instant;
}

/**
 * Fills the archive with the sample cabinet that lies in `folder` (`cabinet.json` and `photos/`), as a task. Photos first,
 * then all records at once; broken off between the two it can simply be started again. Fails with `sample-already-here`.
 */
export async function startSampleCabinet(archive: Archive, tasks: Tasks, { folder, genera, now }: Sample): Promise<Result<TaskSnapshot>> {
  const cabinet = SampleCabinet.parse(JSON.parse(await readFile(join(folder, 'cabinet.json'), 'utf8')));
  const alreadyRunning = tasks.list().some((task) => task.kind === 'sample-cabinet' && task.state === 'running');
  if (alreadyRunning || archive.specimens.count().samples > 0) return fail({ code: 'sample-already-here' });
  const photos = photosOf(cabinet);
  const photoIds = new Map<string, string>();
  const snapshot = tasks.start({
    kind: 'sample-cabinet',
    files: photos.map(({ file }) => file),
    async work(progress, signal) {
      // One at a time: the photos then stand in the order of the cabinet.
      await forEachBounded(photos, 1, signal, async (photo, index) => {
        progress.begin(index);
        const bytes = await pictureOf(photo, folder, addDays(keepersDay(now), photo.takenOn));
        const staged = await archive.originals.stage({ kind: 'stream', stream: whole(bytes), byteLength: bytes.byteLength }, photo.file);
        if (!staged.ok) return refuse(staged.failure);
        const admission = await admitPicture(archive, { staged: staged.value, name: photo.file, sample: true }, () => undefined);
        if (!admission.ok) {
          await archive.originals.discard(staged.value);
          return refuse(admission.failure);
        }
        photoIds.set(photo.file, admission.value.photoId);
        progress.settle(index, admission.value);
      });
      if (photoIds.size < photos.length) return;
      const filled = fillSampleCabinet(archive, cabinet, { photoIds, genera, now });
      if (!filled.ok) refuse(filled.failure);
    },
  });
  return succeed(snapshot);
}

async function* whole(bytes: Uint8Array): AsyncIterable<Uint8Array> {
  yield bytes;
}
