import type { TaskSnapshot } from '../../domain/intake/task.ts';
import type { PlatedPhoto } from '../../domain/plate/platePhoto.ts';
import { forEachBounded } from '../pool.ts';
import type { Tasks } from '../registry.ts';
import type { Cutter } from './cutter.ts';

/** Prepares the cuts of an animal's skins as a task, oldest first; a photo that cannot be cut does not stop the others. */
export function prepareCuts(tasks: Tasks, cutter: Cutter, plated: readonly PlatedPhoto[]): TaskSnapshot {
  return tasks.start({
    kind: 'gallery',
    files: plated.map(({ photo }) => photo.originalName),
    async work(progress, signal) {
      await forEachBounded(plated, 1, signal, async (item, index) => {
        progress.begin(index);
        const cut = await cutter.open(item);
        if (cut.ok) cut.value.stream.destroy();
        progress.settle(index, cut.ok ? { kind: 'added', photoId: item.photo.id } : { kind: 'refused', failure: cut.failure });
      });
    },
  });
}
