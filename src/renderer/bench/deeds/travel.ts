import { ALL_LANDMARKS } from '../../../domain/measuring/landmarks.ts';
import type { BenchDocument } from '../document.ts';
import { landmarksOf } from '../document.ts';
import { handlePosition } from '../handles.ts';
import { abandon, freshlyOpened, redo, undo } from '../history.ts';
import { advance, chooseStep, guideFor } from '../steps.ts';
import { type BenchState, type BenchStore, type BenchTask, handlesInHand } from '../store.ts';
import { takeBackScalePoint } from '../tools/placingScale.ts';
import { RESTING } from '../tools/pointing.ts';
import { changeDocument } from './changeDocument.ts';

/** Turns to another job. What its hand cannot take hold of is let go: keys must not move what nobody sees selected. */
export function takeUp(store: BenchStore, task: BenchTask): void {
  store.setState((state) => {
    const next = { ...state, task, placing: task === 'scale' ? state.placing : null };
    return { ...next, besidePicture: null, selected: handlesInHand(next).some(({ id }) => id === state.selected) ? state.selected : null };
  });
}

/** Escape: drops the gesture in hand, else the last click on the scale object, else the selection. */
export function stepBack(store: BenchStore): void {
  store.setState((state) => {
    if (state.edited.pending !== null || state.pointing.kind !== 'resting') return { edited: abandon(state.edited), pointing: RESTING };
    if (state.placing !== null) return { placing: takeBackScalePoint(state.placing), besidePicture: null };
    if (state.refining !== null) return { refining: null };
    return { selected: null, chosenInstead: null, besidePicture: null };
  });
}

export function undoChange(store: BenchStore): void {
  store.setState((state) => afterTravel(state, undo(state.edited)));
}

export function redoChange(store: BenchStore): void {
  store.setState((state) => afterTravel(state, redo(state.edited)));
}

/** Shows what the archive holds now. The past of the page does not fit it any more and goes. */
export function replaceDocument(store: BenchStore, document: BenchDocument): void {
  store.setState({
    edited: freshlyOpened(document),
    pointing: RESTING,
    placing: null,
    refining: null,
    selected: null,
    chosenInstead: null,
    besidePicture: null,
    guide: guideFor(landmarksOf(document), store.getState().guide.asks),
  });
}

/** Puts a whole document back over the present one, as one change that can be undone. */
export function putBack(store: BenchStore, document: BenchDocument): void {
  const present = store.getState().edited.document;
  const cleared = Object.fromEntries(Object.keys(present).map((key) => [key, undefined]));
  changeDocument(store, 'put-back', { ...cleared, ...document });
}

/**
 * The guide asks for the first point that undo or redo has opened, so that the next click gives it its place again; where
 * none was opened and the point it asks for has got its answer, for the one after that.
 */
function afterTravel(before: BenchState, edited: BenchState['edited']): Partial<BenchState> {
  const landmarks = landmarksOf(edited.document);
  const opened = ALL_LANDMARKS.find((name) => before.edited.document[name] !== undefined && landmarks[name] === undefined);
  const { current } = before.guide;
  const selectedGone = before.selected !== null && handlePosition(edited.document, before.selected) === null;
  const isAnswered = current === null || landmarks[current] !== undefined;
  return {
    edited,
    selected: selectedGone ? null : before.selected,
    chosenInstead: null,
    besidePicture: null,
    guide: opened !== undefined ? chooseStep(before.guide, opened) : isAnswered ? advance(before.guide, landmarks) : before.guide,
  };
}
