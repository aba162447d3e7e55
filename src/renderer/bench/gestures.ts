import { checkCorners } from '../../domain/measuring/corners.ts';
import { isEmpty, sameValue } from './change.ts';
import { placeAt, tapHandle } from './deeds/placing.ts';
import { inOrder } from './deeds/scale.ts';
import { placedScaleOf } from './document.ts';
import { groundOf, handlePlace } from './ground.ts';
import { type Handle, handlePosition, handleUnder, isLandmarkName, moveHandle, scaleHandlesOf } from './handles.ts';
import { abandon, amend, begin, settle } from './history.ts';
import { fallingPoint } from './snapping.ts';
import { type BenchState, type BenchStore, handlesInHand } from './store.ts';
import { type PointerAct, type PointerHappening, point } from './tools/pointing.ts';
import { fitWhole, panBy, pinch, resized, type Size, toImage, type ViewPoint, zoomAbout } from './view.ts';

/** How near the pointer must come to take hold of a handle, in CSS pixels: half a touch target. */
export const REACH_CSS = 20;

/** Feeds one pointer event through the machine and carries out what follows. */
export function pointAt(store: BenchStore, happening: PointerHappening): void {
  const { pointing, view } = store.getState();
  const outcome = point(pointing, happening, view);
  if (outcome.pointing !== pointing) store.setState({ pointing: outcome.pointing });
  for (const act of outcome.acts) carryOut(store, act);
}

/** The handle a press at this place takes hold of. While points are being clicked only a close hit counts. */
export function handleAt(state: BenchState, at: ViewPoint, reachCss: number): Handle | null {
  return handleUnder(handlesInHand(state), state.view, at, reachCss);
}

export function hoverAt(store: BenchStore, at: ViewPoint | null): void {
  store.setState((state) => ({ hover: at === null ? null : toImage(state.view, at) }));
}

export function zoomBy(store: BenchStore, factor: number, about?: ViewPoint): void {
  store.setState((state) => {
    const middle = { xCss: state.canvas.width / 2, yCss: state.canvas.height / 2 };
    return { view: zoomAbout(state.view, about ?? middle, factor, groundOf(state), state.canvas) };
  });
}

export function pan(store: BenchStore, byXCss: number, byYCss: number): void {
  store.setState((state) => ({ view: panBy(state.view, byXCss, byYCss, groundOf(state), state.canvas) }));
}

export function showAll(store: BenchStore): void {
  store.setState((state) => ({ view: fitWhole(state.picture, state.canvas) }));
}

/** The canvas got its first size, or another one. A photo shown whole stays whole. */
export function setCanvas(store: BenchStore, canvas: Size): void {
  store.setState((state) => {
    const showsAll = sameValue(state.view, fitWhole(state.picture, state.canvas));
    return { canvas, view: showsAll ? fitWhole(state.picture, canvas) : resized(state.view, state.canvas, canvas, groundOf(state)) };
  });
}

function carryOut(store: BenchStore, act: PointerAct): void {
  if (act.kind === 'click') placeAt(store, act.at);
  else if (act.kind === 'tap') tapHandle(store, act.id, act.at);
  else store.setState((state) => after(state, act));
}

function after(state: BenchState, act: Exclude<PointerAct, { kind: 'click' | 'tap' }>): Partial<BenchState> {
  switch (act.kind) {
    case 'pan':
      return { view: panBy(state.view, act.byXCss, act.byYCss, groundOf(state), state.canvas) };
    case 'pinch':
      return { view: pinch(state.view, act.from, act.to, groundOf(state), state.canvas) };
    case 'begin':
      return {
        edited: begin(state.edited, act.label),
        selected: act.id,
        chosenInstead: state.chosenInstead === act.id ? act.id : null,
        besidePicture: null,
      };
    case 'drag': {
      const to = handlePlace(state, act.id, act.to);
      return { edited: amend(state.edited, moveHandle(state.edited.document, act.id, to)), hover: to, chosenInstead: null };
    }
    case 'settle':
      return settleInOrder(state);
    case 'abandon':
      return { edited: abandon(state.edited) };
  }
}

/** A dragged point goes to the edge beside it, if points do so now. */
function settleOnEdge(state: BenchState): Partial<BenchState> {
  const { selected, edited } = state;
  const landmark = selected !== null && isLandmarkName(selected) ? edited.document[selected] : undefined;
  if (selected === null || !isLandmarkName(selected) || landmark === undefined || !('at' in landmark)) return { edited: settle(edited) };
  // A press that moved nothing leaves the point as it is.
  if (edited.pending === null || isEmpty(edited.pending.change)) return { edited: settle(edited) };
  return { edited: settle(amend(edited, { [selected]: { ...landmark, ...fallingPoint(state, selected, landmark.at) } })) };
}

/** A dragged corner may have passed another one: the order round the rectangle is put right before it is recorded. */
function settleInOrder(state: BenchState): Partial<BenchState> {
  const { document, pending } = state.edited;
  if (pending?.label === 'move-point') return settleOnEdge(state);
  const marks = pending?.label === 'move-scale' ? placedScaleOf(document) : undefined;
  if (marks?.kind !== 'rectangle' || checkCorners(marks.corners).ok) return { edited: settle(state.edited) };
  const held = state.selected === null ? null : handlePosition(document, state.selected);
  const scale = inOrder(marks);
  const selected = scaleHandlesOf(scale).find(({ at }) => at.xPx === held?.xPx && at.yPx === held.yPx)?.id ?? state.selected;
  return { edited: settle(amend(state.edited, { scale })), selected };
}
