import type { Failure } from '../../domain/failure.ts';
import type { FoundScale } from '../../domain/finding/foundScale.ts';
import type { RoughScale } from '../../domain/finding/refinement.ts';
import { takeFound } from './deeds/finding.ts';
import { failureOf } from './failureOf.ts';
import type { BenchStore } from './store.ts';
import type { ScaleRole } from './tools/placingScale.ts';

/** What the keeper pointed at and wants found exactly in the picture. */
export type Refining =
  | { readonly kind: 'wanted'; readonly rough: RoughScale; readonly as: ScaleRole }
  | { readonly kind: 'failed'; readonly rough: RoughScale; readonly as: ScaleRole; readonly failure: Failure };

/**
 * Has what is pointed at found in the picture, one wish at a time: a newer one, or one that was dropped, makes the answer to
 * an older one worth nothing. Answers how to stop.
 */
export function startRefining(bench: BenchStore, find: (rough: RoughScale, signal: AbortSignal) => Promise<FoundScale>): () => void {
  let stopOlder = new AbortController();
  const stop = bench.subscribe(({ refining }, before) => {
    if (refining === before.refining) return;
    stopOlder.abort();
    if (refining?.kind !== 'wanted') return;
    const current = new AbortController();
    stopOlder = current;
    const isCurrent = () => !current.signal.aborted && bench.getState().refining === refining;
    const { rough, as } = refining;
    const fail = (error: unknown) => bench.setState({ refining: { kind: 'failed', rough, as, failure: failureOf(error) } });
    find(rough, current.signal).then(
      (found) => {
        if (!isCurrent()) return;
        try {
          takeFound(bench, found, as);
        } catch (error) {
          fail(error);
        }
      },
      (error: unknown) => {
        if (isCurrent()) fail(error);
      },
    );
  });
  return () => {
    stop();
    stopOlder.abort();
  };
}
