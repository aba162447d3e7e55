import { join } from 'node:path';
import type { Failure } from '../../domain/failure.ts';
import type { Files } from './files.ts';
import { sha256Of } from './hashing.ts';
import { type Layout, originalPath } from './layout.ts';

/** Removes everything in `incoming/` but what a planned import still needs. Answers the names that stay. */
export async function sweepIncoming(files: Files, layout: Layout, needed: ReadonlyMap<string, unknown>): Promise<ReadonlySet<string>> {
  const names = await files.list(layout.incoming);
  for (const name of names) {
    if (!needed.has(name)) await files.remove(join(layout.incoming, name));
  }
  return new Set(names.filter((name) => needed.has(name)));
}

/**
 * Removes originals and renditions that no row names, once they are older than the grace: a row is committed after its file.
 */
export async function sweepUnnamed(
  { files, layout }: { readonly files: Files; readonly layout: Layout },
  olderThanMs: number,
  removeUnlessNeeded: (sha256: string, path: string) => Promise<boolean>,
): Promise<number> {
  let removed = 0;
  for (const root of [layout.originals, layout.renditions]) {
    for (const prefix of await files.list(root)) {
      for (const name of await files.list(join(root, prefix))) {
        const path = join(root, prefix, name);
        const facts = await files.facts(path);
        if (!facts || facts.changedMs > olderThanMs) continue;
        // A rendition's name begins with the hash, too.
        if (await removeUnlessNeeded(prefix + name.slice(0, 62), path)) removed += 1;
      }
    }
  }
  return removed;
}

/** Hashes one recorded original again. null when it is what it was. */
export async function harmOf(
  { files, layout }: { readonly files: Files; readonly layout: Layout },
  recorded: { readonly photoId: string; readonly sha256: string },
): Promise<Failure | null> {
  const path = originalPath(layout, recorded.sha256);
  if (!(await files.facts(path))) return { code: 'original-missing', photoId: recorded.photoId };
  return (await sha256Of(files, path)) === recorded.sha256 ? null : { code: 'original-damaged', photoId: recorded.photoId };
}
