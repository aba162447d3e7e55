import { refuse } from '../../domain/failure.ts';
import type { Renditions } from '../records/renditions.ts';
import { diskFailure } from './diskFailure.ts';
import type { Files } from './files.ts';
import { type Layout, renditionFolder, renditionPath } from './layout.ts';

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

  return {
    async put(sha256, kind, bytes) {
      try {
        await files.makeFolder(renditionFolder(layout, sha256));
        await write(renditionPath(layout, sha256, kind), bytes);
      } catch (error) {
        const failure = diskFailure(error, layout.folder);
        if (failure) refuse(failure);
        throw error;
      }
    },
    async open(sha256, kind) {
      const path = renditionPath(layout, sha256, kind);
      const facts = await files.facts(path);
      return facts && facts.byteLength > 0 ? files.stream(path) : null;
    },
    async missing(sha256, kinds) {
      const present = await Promise.all(kinds.map((kind) => files.facts(renditionPath(layout, sha256, kind))));
      return kinds.filter((_, index) => !present[index]?.byteLength);
    },
  };
}
