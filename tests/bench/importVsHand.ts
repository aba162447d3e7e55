import { createHash } from 'node:crypto';
import { createReadStream, openAsBlob } from 'node:fs';
import { mkdir, mkdtemp, open, rm, stat } from 'node:fs/promises';
import { availableParallelism, tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import sharp from 'sharp';
import { RENDITION_LONGEST_PX } from '../../src/domain/photo/photo.ts';
import { forEachBounded } from '../../src/tasks/pool.ts';
import { answer, openBenchCore, taskEnd } from './core.ts';
import { atMost, type Figure } from './figure.ts';
import { writeDistinctCopies, writeLargePicture } from './pictures.ts';

const PHOTOS = 100;
const BATCHES = 5;
const AT_A_TIME = Math.min(4, availableParallelism());

/** 100 photos of 12 megapixels: through the whole program, against the same work written by hand, in turns. */
export async function importVsHand(): Promise<Figure[]> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-bench-'));
  try {
    const master = join(folder, 'master.jpg');
    await writeLargePicture(master, 4032, 3024);
    const photos = await writeDistinctCopies(master, folder, PHOTOS);
    const hand = join(folder, 'hand');
    await mkdir(hand);
    const core = await openBenchCore(join(folder, 'archive'));
    let importMs = 0;
    let handMs = 0;
    const size = PHOTOS / BATCHES;
    for (let batch = 0; batch < BATCHES; batch++) {
      const files = photos.slice(batch * size, (batch + 1) * size);
      handMs += await timed(() => keepByHand(files, hand));
      importMs += await timed(async () => {
        const announced = await Promise.all(files.map(async (file) => ({ name: basename(file), byteLength: (await stat(file)).size })));
        const { intakeId } = await answer<{ intakeId: string }>(core, 'POST', '/api/intakes', { files: announced });
        await forEachBounded(files, AT_A_TIME, new AbortController().signal, async (file, index) => {
          await answer(core, 'PUT', `/api/intakes/${intakeId}/files/${index}`, await openAsBlob(file));
        });
        const task = await answer<{ id: string }>(core, 'POST', '/api/imports', { intakeId });
        await taskEnd(core, task.id);
      });
    }
    const { photos: kept } = await answer<{ photos: number }>(core, 'GET', '/api/about');
    if (kept !== PHOTOS) throw new Error(`Expected ${PHOTOS} photos to be kept but received ${kept}`);
    await core.close();
    return [atMost('import-vs-hand-ratio', importMs / handMs, '1', 1.25)];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** What anybody would write: copy while hashing, sync, a thumbnail and a screenful by sharp. */
async function keepByHand(files: readonly string[], folder: string): Promise<void> {
  await forEachBounded(files, AT_A_TIME, new AbortController().signal, async (file) => {
    const hash = createHash('sha256');
    const target = join(folder, basename(file));
    const handle = await open(target, 'wx');
    for await (const chunk of createReadStream(file) as AsyncIterable<Buffer>) {
      hash.update(chunk);
      await handle.write(chunk);
    }
    await handle.sync();
    await handle.close();
    hash.digest('hex');
    for (const [kind, longestPx] of Object.entries(RENDITION_LONGEST_PX)) {
      await sharp(target)
        .autoOrient()
        .resize(longestPx, longestPx, { fit: 'inside', withoutEnlargement: true })
        .jpeg()
        .toFile(`${target}.${kind}.jpg`);
    }
  });
}

async function timed(work: () => Promise<void>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
