import type { FoundScale } from '../../../domain/finding/foundScale.ts';
import type { RoughScale } from '../../../domain/finding/refinement.ts';
import type { ScaleMarks } from '../../../domain/measuring/calibration.ts';
import type { BenchStore } from '../store.ts';
import type { ScaleRole } from '../tools/placingScale.ts';
import { changeDocument } from './changeDocument.ts';

/** Asks for the object the keeper has pointed at to be found exactly. */
export function wantRefined(store: BenchStore, rough: RoughScale, as: ScaleRole = 'scale'): void {
  store.setState({ refining: { kind: 'wanted', rough, as } });
}

/** Lets what was pointed at go. The marks of before are still there. */
export function dropRefining(store: BenchStore): void {
  store.setState({ refining: null });
}

/**
 * Takes over marks that were found in the picture, as one change that can be undone. Finding takes its time: whoever has gone on to
 * the points meanwhile stays there.
 */
export function takeFound(store: BenchStore, found: FoundScale, as: ScaleRole = 'scale'): void {
  if (as === 'check') {
    changeDocument(store, 'place-check', { check: found.marks });
    store.setState({ refining: null, placing: null, preview: null });
    return;
  }
  changeDocument(store, 'find-scale', { scale: found.marks, roughScale: undefined });
  store.setState(({ task, selected }) => ({
    found,
    refining: null,
    placing: null,
    preview: null,
    selected: task === 'scale' ? null : selected,
  }));
}

/** Shows marks on the photo that are not taken over. */
export function showPreview(store: BenchStore, marks: ScaleMarks | null): void {
  store.setState({ preview: marks });
}
