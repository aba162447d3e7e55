import { join } from 'node:path';
import type { Ambient } from '../../domain/ambient.ts';
import type { Failure } from '../../domain/failure.ts';
import { succeed } from '../../domain/result.ts';
import type { Catalogue } from '../catalogue/catalogue.ts';
import { forgetRemovals, hashesNeeded, recordedOriginals } from '../catalogue/housekeeping.ts';
import type { Originals } from '../records/originals.ts';
import type { Files } from './files.ts';
import { type Layout, originalPath } from './layout.ts';
import { publish } from './publishing.ts';
import { stage } from './staging.ts';
import { harmOf, sweepUnnamed } from './sweeping.ts';

interface StoreContext {
  readonly files: Files;
  readonly layout: Layout;
  readonly ambient: Ambient;
  readonly catalogue: Catalogue;
}

export function originalsIn({ files, layout, ambient, catalogue }: StoreContext): Originals {
  /** Published or found since the opening: their rows may be about to be committed, so no sweep touches them. */
  const inHand = new Set<string>();
  /** What a sweep is taking away at this moment. */
  const going = new Map<string, Promise<void>>();
  const place = { files, layout };

  async function takeInHand(sha256: string): Promise<void> {
    inHand.add(sha256);
    await going.get(sha256);
  }

  const originals: Originals = {
    stage: (source, name) => stage({ ...place, newName: () => ambient.newId() }, source, name),
    stagedPath: ({ stagedName }) => join(layout.incoming, stagedName),
    async publish(staged) {
      await takeInHand(staged.sha256);
      return publish(place, staged);
    },
    discard: ({ stagedName }) => files.remove(join(layout.incoming, stagedName)),
    async put(source, name) {
      const staged = await originals.stage(source, name);
      if (!staged.ok) return staged;
      const published = await originals.publish(staged.value);
      if (published.ok) return succeed({ ...staged.value, alreadyHere: published.value === 'already-here' });
      // Should this fail too, the opening sweeps what is left; the first failure is the one to tell.
      await Promise.allSettled([originals.discard(staged.value)]);
      return published;
    },
    async pathOf(sha256) {
      await takeInHand(sha256);
      const path = originalPath(layout, sha256);
      return (await files.facts(path)) ? path : null;
    },
    async open(sha256) {
      const path = originalPath(layout, sha256);
      return (await files.facts(path)) ? files.stream(path) : null;
    },
    async sweep(graceMs) {
      const olderThanMs = Date.parse(ambient.now()) - graceMs;
      forgetRemovals(catalogue, new Date(olderThanMs).toISOString());
      const needed = hashesNeeded(catalogue);
      const removeUnlessNeeded = async (sha256: string, path: string): Promise<boolean> => {
        if (needed.has(sha256) || inHand.has(sha256)) return false;
        const removal = files.remove(path).finally(() => going.delete(sha256));
        going.set(sha256, removal);
        await removal;
        return true;
      };
      return { removed: await sweepUnnamed(place, olderThanMs, removeUnlessNeeded) };
    },
    async check(signal) {
      const harm: Failure[] = [];
      let sound = 0;
      for (const recorded of recordedOriginals(catalogue)) {
        if (signal?.aborted) break;
        const found = await harmOf(place, recorded);
        if (found) harm.push(found);
        else sound += 1;
      }
      return { sound, harm };
    },
  };
  return originals;
}
