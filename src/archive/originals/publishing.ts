import { join } from 'node:path';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { Staged } from '../records/originals.ts';
import { diskFailure } from './diskFailure.ts';
import { errorCode, type Files } from './files.ts';
import { sha256Of } from './hashing.ts';
import { type Layout, originalFolder, originalPath } from './layout.ts';

/** Answers of file systems without hard links (exFAT, some network drives). */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EINVAL', 'EMLINK']);

/**
 * Gives staged bytes their lasting name. `link` refuses to replace, which proves that nothing was overwritten; `rename`
 * is the way out where links do not exist, harmless because the name is the hash of the content.
 */
export async function publish(
  { files, layout }: { readonly files: Files; readonly layout: Layout },
  staged: Staged,
): Promise<Result<'published' | 'already-here'>> {
  const from = join(layout.incoming, staged.stagedName);
  const folder = originalFolder(layout, staged.sha256);
  const to = originalPath(layout, staged.sha256);
  try {
    const present = await files.facts(to);
    if (present?.byteLength === staged.byteLength && (await sha256Of(files, to)) === staged.sha256) {
      await files.remove(from);
      // Another publication may have named it a moment ago, and not yet synced the name.
      await files.syncFolder(folder);
      return succeed('already-here');
    }
    if (present) {
      // What lies there has been damaged, so it is not the original any more; the staged copy is.
      await files.rename(from, to);
    } else {
      await files.makeFolder(folder);
      await files.syncFolder(layout.originals);
      await move(files, from, to);
    }
    await files.syncFolder(folder);
    return succeed('published');
  } catch (error) {
    // The same content was published between the look and the link; now it is found there.
    if (errorCode(error) === 'EEXIST') return publish({ files, layout }, staged);
    const failure = diskFailure(error, layout.folder);
    if (failure) return fail(failure);
    throw error;
  }
}

async function move(files: Files, from: string, to: string): Promise<void> {
  try {
    await files.link(from, to);
  } catch (error) {
    if (!NO_LINKS.has(errorCode(error) ?? '')) throw error;
    await files.rename(from, to);
    return;
  }
  await files.remove(from);
}
