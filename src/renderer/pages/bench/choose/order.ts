import type { BenchCandidate } from '../../../../api/contract/bench.ts';

/** Unmeasured skins seen from above first, then other photos of skins, then the rest; measured ones behind their like; newest first. */
export function inOrderOfWork(candidates: readonly BenchCandidate[]): BenchCandidate[] {
  return candidates.toSorted((one, other) => rankOf(one) - rankOf(other) || dayOf(other).localeCompare(dayOf(one)));
}

/** What a photo of the Bench shows. */
export interface Shown {
  readonly photo: Pick<BenchCandidate['photo'], 'subject' | 'view'>;
}

/** A skin seen from above: what the Bench is for first. */
export function isSkinFromAbove({ photo }: Shown): boolean {
  return photo.subject.kind === 'skin' && photo.view === 'dorsal';
}

function rankOf(candidate: BenchCandidate): number {
  const rank = isSkinFromAbove(candidate) ? 0 : candidate.photo.subject.kind === 'skin' ? 2 : 4;
  return rank + (candidate.measured ? 1 : 0);
}

function dayOf({ photo }: BenchCandidate): string {
  return photo.takenOn ?? photo.importedAt;
}
