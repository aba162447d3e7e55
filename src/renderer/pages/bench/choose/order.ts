import type { BenchCandidate } from '../../../../api/contract/bench.ts';

/** Unmeasured skins seen from above first, then other photos of skins, then the rest; measured ones behind their like; newest first. */
export function inOrderOfWork(candidates: readonly BenchCandidate[]): BenchCandidate[] {
  return candidates.toSorted((one, other) => rankOf(one) - rankOf(other) || dayOf(other).localeCompare(dayOf(one)));
}

function rankOf({ photo, measured }: BenchCandidate): number {
  const isSkin = photo.subject.kind === 'skin';
  const rank = isSkin && photo.view === 'dorsal' ? 0 : isSkin ? 2 : 4;
  return rank + (measured ? 1 : 0);
}

function dayOf({ photo }: BenchCandidate): string {
  return photo.takenOn ?? photo.importedAt;
}
