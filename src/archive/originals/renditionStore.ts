import { join } from 'node:path';
import { refuse } from '../../domain/failure.ts';
import type { Renditions } from '../records/renditions.ts';
import { diskFailure } from './diskFailure.ts';
import type { Files } from './files.ts';
import { cutPath, cutPrefix, type Layout, renditionFolder, renditionPath } from './layout.ts';

export function renditionsIn({ files, layout }: { readonly files: Files; readonly layout: Layout }, newName: () => string): Renditions {
  /** Not synced: what a power cut leaves behind is a missing or short file at worst, and `open` takes no short one. */
  async function write(path: string, bytes: Uint8Array): Promise<void> {
    const staged = `${path}.${newName()}`;
    const target = await files.createNew(staged);
    try {
      await target.write(bytes);
    } catch (error) {
      await Promise.allSettled([target.close()]);
      await Promise.allSettled([files.remove(staged)]);
      throw error;
    }
    await target.close();
    await files.rename(staged, path);
  }

  async function keep(sha256: string, path: string, bytes: Uint8Array): Promise<void> {
    try {
      await files.makeFolder(renditionFolder(layout, sha256));
      await write(path, bytes);
    } catch (error) {
      const failure = diskFailure(error, layout.folder);
      if (failure) refuse(failure);
      throw error;
    }
  }

  async function openKept(path: string) {
    const facts = await files.facts(path);
    return facts && facts.byteLength > 0 ? files.stream(path) : null;
  }

  return {
    put: (sha256, kind, bytes) => keep(sha256, renditionPath(layout, sha256, kind), bytes),
    open: (sha256, kind) => openKept(renditionPath(layout, sha256, kind)),
    async putCut(sha256, key, bytes) {
      const path = cutPath(layout, sha256, key);
      await keep(sha256, path, bytes);
      const folder = renditionFolder(layout, sha256);
      const cuts = (await files.list(folder)).filter((name) => name.startsWith(cutPrefix(sha256)) && name.endsWith('.webp'));
      for (const name of cuts) {
        if (join(folder, name) !== path) await files.remove(join(folder, name));
      }
    },
    hasCut: async (sha256, key) => Boolean((await files.facts(cutPath(layout, sha256, key)))?.byteLength),
    openCut: (sha256, key) => openKept(cutPath(layout, sha256, key)),
    async missing(sha256, kinds) {
      const present = await Promise.all(kinds.map((kind) => files.facts(renditionPath(layout, sha256, kind))));
      return kinds.filter((_, index) => !present[index]?.byteLength);
    },
  };
}
