import type { Landmarks } from '../../../domain/measuring/landmarks.ts';
import { groundOf, handlePlace } from '../ground.ts';
import { type HandleId, handlePosition, isLandmarkName, moveHandle, movingLabel } from '../handles.ts';
import { nudge } from '../history.ts';
import { type BenchStore, handlesInHand } from '../store.ts';
import { centerOn, shows, toView } from '../view.ts';
import { clearPoints } from './points.ts';

/** A handle nearer to the edge of the canvas than this is not well in sight, CSS pixels. */
const IN_SIGHT_CSS = 12;

export function select(store: BenchStore, id: HandleId | null): void {
  store.setState({ selected: id });
}

/** Selects a handle. The photo moves only to bring one into sight: a hand that aims at it must find it where it was. */
export function showHandle(store: BenchStore, id: HandleId): void {
  store.setState((state) => {
    const at = handlePosition(state.edited.document, id);
    if (at === null) return {};
    const isInSight = shows(state.canvas, toView(state.view, at), IN_SIGHT_CSS);
    return { selected: id, ...(isInSight ? {} : { view: centerOn(state.view, at, 0, groundOf(state), state.canvas) }) };
  });
}

/** Selects the handle before or after the selected one, round and round, and shows it. */
export function selectNeighbor(store: BenchStore, by: 1 | -1): void {
  const state = store.getState();
  const handles = handlesInHand(state);
  const index = handles.findIndex((handle) => handle.id === state.selected);
  const next = handles.at(index < 0 ? Math.min(0, by) : (index + by) % handles.length);
  if (next !== undefined) showHandle(store, next.id);
}

/** An arrow key on the selected handle. `atMs` of a steady clock joins a quick run of them. */
export function nudgeSelected(store: BenchStore, byXPx: number, byYPx: number, atMs: number): boolean {
  const state = store.getState();
  const { selected, edited } = state;
  const from = selected === null ? null : handlePosition(edited.document, selected);
  if (selected === null || from === null) return false;
  const to = handlePlace(state, selected, { xPx: from.xPx + byXPx, yPx: from.yPx + byYPx });
  store.setState({ edited: nudge(edited, movingLabel(selected), moveHandle(edited.document, selected, to), selected, atMs) });
  return true;
}

export function removeSelected(store: BenchStore): void {
  const { selected } = store.getState();
  if (selected !== null && isLandmarkName(selected)) clearPoints(store, [selected]);
}

/** Shows the points of other passes faintly; an empty list hides them again. */
export function showGhosts(store: BenchStore, ghosts: readonly Landmarks[]): void {
  store.setState({ ghosts });
}

/** No more points are to come in this pass: the passes before it may be seen. */
export function endPlacing(store: BenchStore): void {
  store.setState({ isPlacingEnded: true });
}
