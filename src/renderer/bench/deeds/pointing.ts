import { loupeAfter } from '../loupe.ts';
import type { EdgeFinder } from '../snapping.ts';
import type { BenchStore } from '../store.ts';

export function changeLoupe(store: BenchStore, by: 1 | -1): void {
  store.setState(({ loupeZoom }) => ({ loupeZoom: loupeAfter(loupeZoom, by) }));
}

/** Whether points go to the nearest strong edge from now on. */
export function setSnaps(store: BenchStore, snaps: boolean): void {
  store.setState({ snaps });
}

/** A point placed meanwhile falls where it is clicked. */
export function holdSnapBack(store: BenchStore, isHeldBack: boolean): void {
  if (store.getState().snapIsHeldBack !== isHeldBack) store.setState({ snapIsHeldBack: isHeldBack });
}

/** What reads the edges of the photo that is open now. */
export function giveEdges(store: BenchStore, findEdge: EdgeFinder | null): void {
  store.setState({ findEdge });
}
