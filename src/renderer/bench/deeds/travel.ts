import type { BenchDocument } from '../document.ts';
import { landmarksOf } from '../document.ts';
import { handlePosition } from '../handles.ts';
import { abandon, freshlyOpened, redo, undo } from '../history.ts';
import { advance, guideFor } from '../steps.ts';
import { type BenchState, type BenchStore, type BenchTask, handlesInHand } from '../store.ts';
import { takeBackScalePoint } from '../tools/placingScale.ts';
import { RESTING } from '../tools/pointing.ts';
import { changeDocument } from './changeDocument.ts';

/** Turns to another job. What its hand cannot take hold of is let go: keys must not move what nobody sees selected. */
export function takeUp(store: BenchStore, task: BenchTask): void {
  store.setState((state) => {
    const next = { ...state, task, placing: task === 'scale' ? state.placing : null };
    return { ...next, selected: handlesInHand(next).some(({ id }) => id === state.selected) ? state.selected : null };
  });
}

/** Escape: drops the gesture in hand, else the last click on the scale object, else the selection. */
export function stepBack(store: BenchStore): void {
  store.setState((state) => {
    if (state.edited.pending !== null || state.pointing.kind !== 'resting') return { edited: abandon(state.edited), pointing: RESTING };
    if (state.placing !== null) return { placing: takeBackScalePoint(state.placing) };
    return { selected: null };
  });
}

export function undoChange(store: BenchStore): void {
  store.setState((state) => afterTravel({ ...state, edited: undo(state.edited) }));
}

export function redoChange(store: BenchStore): void {
  store.setState((state) => afterTravel({ ...state, edited: redo(state.edited) }));
}

/** Shows what the archive holds now. The past of the page does not fit it any more and goes. */
export function replaceDocument(store: BenchStore, document: BenchDocument): void {
  store.setState({
    edited: freshlyOpened(document),
    pointing: RESTING,
    placing: null,
    selected: null,
    guide: guideFor(landmarksOf(document)),
  });
}

/** Puts a whole document back over the present one, as one change that can be undone. */
export function putBack(store: BenchStore, document: BenchDocument): void {
  const present = store.getState().edited.document;
  const cleared = Object.fromEntries(Object.keys(present).map((key) => [key, undefined]));
  changeDocument(store, 'put-back', { ...cleared, ...document });
}

/** The guide asks for the first point that undo or redo has opened, if it had none to ask for. */
function afterTravel(state: BenchState): BenchState {
  const landmarks = landmarksOf(state.edited.document);
  const { current } = state.guide;
  const selectedGone = state.selected !== null && handlePosition(state.edited.document, state.selected) === null;
  const guide = current === null || landmarks[current] !== undefined ? advance({ ...state.guide, current: null }, landmarks) : state.guide;
  return { ...state, selected: selectedGone ? null : state.selected, guide };
}
