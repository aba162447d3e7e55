import type { ImagePoint } from '../../../domain/measuring/points.ts';
import { landmarksOf } from '../document.ts';
import { advance, landmarkAt } from '../steps.ts';
import { type BenchState, type BenchStore, placingLandmark } from '../store.ts';
import { placeScalePoint } from '../tools/placingScale.ts';
import { changeDocument } from './changeDocument.ts';
import { inOrder } from './scale.ts';

/** A click on the photo, or Enter at its middle: the next point of whatever is being placed. */
export function placeAt(store: BenchStore, at: ImagePoint): void {
  const state = store.getState();
  if (!isInside(state, at)) return;
  if (state.placing !== null) {
    const { placing, marks } = placeScalePoint(state.placing, at);
    if (marks !== null) changeDocument(store, 'place-scale', { scale: inOrder(marks) });
    store.setState({ placing, ...(marks === null ? {} : { selected: marks.kind === 'two-points' ? 'end-1' : 'corner-1' }) });
    return;
  }
  const name = placingLandmark(state);
  if (name === null) {
    store.setState({ selected: null });
    return;
  }
  changeDocument(store, state.edited.document[name] === undefined ? 'place-point' : 'move-point', {
    [name]: landmarkAt(state.guide, name, at),
  });
  store.setState((now) => ({ selected: name, guide: advance(now.guide, landmarksOf(now.edited.document)) }));
}

function isInside(state: BenchState, at: ImagePoint): boolean {
  return at.xPx >= 0 && at.yPx >= 0 && at.xPx <= state.picture.width && at.yPx <= state.picture.height;
}
