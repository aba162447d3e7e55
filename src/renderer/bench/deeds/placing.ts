import type { ImagePoint } from '../../../domain/measuring/points.ts';
import { landmarksOf } from '../document.ts';
import { takesClick } from '../ground.ts';
import { confirmHandle, type HandleId, isLandmarkName } from '../handles.ts';
import { fallingPoint } from '../snapping.ts';
import { advance, landmarkAt } from '../steps.ts';
import { type BenchStore, placingLandmark } from '../store.ts';
import { placeScalePoint } from '../tools/placingScale.ts';
import { changeDocument } from './changeDocument.ts';
import { wantRefined } from './finding.ts';
import { inOrder } from './scale.ts';

/** A click on the photo, or Enter at its middle: the next point of whatever is being placed. */
export function placeAt(store: BenchStore, at: ImagePoint): void {
  const state = store.getState();
  if (!takesClick(state, at)) {
    const places = state.placing !== null || placingLandmark(state) !== null;
    store.setState({ besidePicture: places ? at : null, chosenInstead: null });
    return;
  }
  store.setState({ besidePicture: null });
  if (state.placing !== null) {
    const { placing, marks, rough } = placeScalePoint(state.placing, at);
    if (rough !== null) wantRefined(store, rough, state.placingAs);
    if (marks !== null && state.placingAs === 'check') {
      changeDocument(store, 'place-check', { check: inOrder(marks) });
      store.setState({ placing });
      return;
    }
    if (marks !== null) changeDocument(store, 'place-scale', { scale: inOrder(marks), roughScale: undefined });
    store.setState({ placing, ...(marks === null ? {} : { selected: marks.kind === 'two-points' ? 'end-1' : 'corner-1' }) });
    return;
  }
  const name = placingLandmark(state);
  if (name === null) {
    store.setState({ selected: null });
    return;
  }
  const before = state.edited.document[name];
  const fallen = fallingPoint(state, name, at);
  const placed = before !== undefined && 'at' in before ? before : null;
  const height = placed === null ? state.knownHeights[name] : placed.height;
  changeDocument(store, before === undefined ? 'place-point' : 'move-point', {
    [name]: landmarkAt(state.guide, name, fallen.at, { ...fallen, height, called: placed?.called }),
  });
  store.setState((now) => ({ selected: name, chosenInstead: null, guide: advance(now.guide, landmarksOf(now.edited.document)) }));
}

/**
 * A press on a handle that moved nothing. Where a point was to be placed it may have been meant for that: the store then
 * says so, and the same press again places the point. On a rough mark of the scale object it means that it lies right.
 */
export function tapHandle(store: BenchStore, id: HandleId, at: ImagePoint): void {
  const { chosenInstead, edited } = store.getState();
  if (!isLandmarkName(id)) {
    changeDocument(store, 'move-scale', confirmHandle(edited.document, id));
    return;
  }
  if (placingLandmark(store.getState()) === null) return;
  if (chosenInstead === id) placeAt(store, at);
  else store.setState({ chosenInstead: id, besidePicture: null });
}
