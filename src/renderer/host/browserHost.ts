import { Refusal } from '../../domain/failure.ts';
import { ask } from '../client/ask.ts';
import type { HandOverWatch, Host } from './host.ts';

/** Enough to keep the line busy while one file is being written to the disk. */
const FILES_AT_ONCE = 2;

/** In a browser the bytes of each file are sent. */
export const browserHost: Host = {
  async handOver(files, watch) {
    const { intakeId } = await ask('POST /api/intakes', {
      body: { files: files.map((file) => ({ name: file.name, byteLength: file.size })) },
      signal: watch.signal,
    });
    const queue = [...files.entries()];
    let sent = 0;
    const sender = async () => {
      for (let next = queue.shift(); next; next = queue.shift()) {
        await send(intakeId, next[0], next[1], watch);
        sent += 1;
        watch.onSent(sent);
      }
    };
    await Promise.all(Array.from({ length: FILES_AT_ONCE }, sender));
    return intakeId;
  },
};

async function send(intakeId: string, index: number, file: File, { signal }: HandOverWatch): Promise<void> {
  try {
    await ask('PUT /api/intakes/{intakeId}/files/{index}', { path: { intakeId, index: String(index) }, body: file, signal });
  } catch (error) {
    if (!concernsOneFile(error)) throw error;
  }
}

/**
 * Refusals that name a file, and a file that the browser itself cannot read (gone or locked meanwhile, seen as
 * `unreachable`): the import will report them. If it is the archive that does not answer, asking for the import will say so.
 */
function concernsOneFile(error: unknown): boolean {
  return error instanceof Refusal && ('file' in error.failure || error.failure.code === 'unreachable');
}
