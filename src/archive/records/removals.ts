import type { PendingRemoval, RemovableKind, Removal, RemovalCounts, Restoration } from '../../domain/removal.ts';
import type { Result } from '../../domain/result.ts';

/** Removing with the way back. What was removed can be restored until the archive is opened the next time. */
export interface Removals {
  preview(kind: RemovableKind, id: string): Result<RemovalCounts>;
  /** Takes the record and what hangs on it, in one transaction. A photo that is evidence fails with `photo-in-use`. */
  remove(kind: RemovableKind, id: string): Result<Removal>;
  /** Takes all sample animals and the sample photos that no remaining determination leans on. */
  removeSamples(): Result<Removal>;
  /** Those that can be restored, newest first. */
  pending(): readonly PendingRemoval[];
  /**
   * Puts everything back exactly as it was, but for photos that were given to something else since. Fails with `removal-gone`, with `code-taken` or `skin-already-recorded` when the
   * place has been filled since, and with `removal-out-of-order` when what it hangs on was removed after it.
   */
  restore(removalId: string): Result<Restoration>;
}
