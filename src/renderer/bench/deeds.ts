import type { ScaleMarks } from '../../domain/measuring/calibration.ts';
import { orderCorners } from '../../domain/measuring/corners.ts';
import type { LandmarkName, LegId } from '../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';
import type { CarapaceHeight } from '../../domain/measuring/reading.ts';
import type { Patch } from './change.ts';
import { type BenchDocument, type BenchEntries, landmarksOf } from './document.ts';
import { type HandleId, handlePosition, isLandmarkName, moveHandle, movingLabel } from './handles.ts';
import { abandon, type ChangeLabel, freshlyOpened, nudge, record, redo, undo } from './history.ts';
import { advance, chooseStep, guideFor, landmarkAt, markAbsent, markRegrown, namesIn, setRegrown } from './steps.ts';
import { type BenchState, type BenchStore, type BenchTask, placingLandmark } from './store.ts';
import { type PlacingScale, placeScalePoint, roughMarks, startPlacing, takeBackScalePoint } from './tools/placingScale.ts';
import { RESTING } from './tools/pointing.ts';
import { centreOn, toImage } from './view.ts';

/** What a person can do on the Bench besides dragging: each is one change of the store, most are one entry of the history. */

function change(store: BenchStore, label: ChangeLabel, patch: Patch<BenchEntries>): void {
  store.setState((state) => ({ edited: record(state.edited, label, patch) }));
}

export function takeUp(store: BenchStore, task: BenchTask): void {
  store.setState((state) => ({ task, placing: task === 'scale' ? state.placing : null }));
}

export function beginPlacingScale(store: BenchStore, object: PlacingScale['object']): void {
  store.setState({ task: 'scale', placing: startPlacing(object), selected: null });
}

/** Puts the handles of the chosen object down in the middle of what is visible. */
export function putHandlesDown(store: BenchStore): void {
  const { placing, view, canvas, picture } = store.getState();
  if (placing === null) return;
  const first = toImage(view, { xCss: 0, yCss: 0 });
  const last = toImage(view, { xCss: canvas.width, yCss: canvas.height });
  const topLeft = { xPx: Math.max(0, first.xPx), yPx: Math.max(0, first.yPx) };
  const bottomRight = { xPx: Math.min(picture.width, last.xPx), yPx: Math.min(picture.height, last.yPx) };
  change(store, 'place-scale', { scale: roughMarks(placing.object, { topLeft, bottomRight }) });
  store.setState({ placing: null, selected: placing.kind === 'placingEnds' ? 'end-1' : 'corner-1' });
}

export function changeScale(store: BenchStore, marks: ScaleMarks): void {
  change(store, 'change-scale', { scale: marks });
}

export function removeScale(store: BenchStore): void {
  change(store, 'remove-scale', { scale: undefined });
  store.setState({ selected: null });
}

export function setHeight(store: BenchStore, height: CarapaceHeight): void {
  change(store, 'set-height', { height });
}

export function setPointing(store: BenchStore, pointingPx: number): void {
  change(store, 'set-pointing', { pointingPx });
}

/** A click on the photo, or Enter at its middle: the next point of whatever is being placed. */
export function placeAt(store: BenchStore, at: ImagePoint): void {
  const state = store.getState();
  if (!isInside(state, at)) return;
  if (state.placing !== null) {
    const { placing, marks } = placeScalePoint(state.placing, at);
    if (marks !== null) change(store, 'place-scale', { scale: inOrder(marks) });
    store.setState({ placing, ...(marks === null ? {} : { selected: marks.kind === 'two-points' ? 'end-1' : 'corner-1' }) });
    return;
  }
  const name = placingLandmark(state);
  if (name === null) {
    store.setState({ selected: null });
    return;
  }
  change(store, state.edited.document[name] === undefined ? 'place-point' : 'move-point', { [name]: landmarkAt(state.guide, name, at) });
  store.setState((now) => ({ selected: name, guide: advance(now.guide, landmarksOf(now.edited.document)) }));
}

export function markPoints(store: BenchStore, names: readonly LandmarkName[], as: 'missing' | 'not-visible', label: ChangeLabel): void {
  change(store, label, markAbsent(names, as));
  store.setState((state) => {
    const landmarks = landmarksOf(state.edited.document);
    const asked = state.guide.current;
    const gone = state.selected !== null && handlePosition(state.edited.document, state.selected) === null;
    return {
      selected: gone ? null : state.selected,
      guide: asked === null || names.includes(asked) ? advance(state.guide, landmarks) : state.guide,
    };
  });
}

export function markLeg(store: BenchStore, leg: LegId, as: 'missing' | 'not-visible'): void {
  markPoints(store, namesIn(leg), as, 'mark-leg');
}

/** A regenerated leg: its points keep their place, and points still to come are regenerated too. */
export function markLegRegrown(store: BenchStore, leg: LegId, isRegrown: boolean): void {
  const landmarks = landmarksOf(store.getState().edited.document);
  change(store, 'mark-leg', markRegrown(landmarks, leg, isRegrown));
  store.setState((state) => ({ guide: setRegrown(state.guide, leg, isRegrown) }));
}

/** Takes back what is known of some points; the guide asks for the first of them. */
export function clearPoints(store: BenchStore, names: readonly LandmarkName[]): void {
  change(store, 'remove-point', Object.fromEntries(names.map((name) => [name, undefined])));
  const [first] = names;
  store.setState((state) => ({
    selected: state.selected !== null && isLandmarkName(state.selected) && names.includes(state.selected) ? null : state.selected,
    guide: first === undefined ? state.guide : chooseStep(state.guide, first),
  }));
}

/** Chooses a point from the drawing or the list: one that lies on the photo is selected and shown, else it is asked for. */
export function choosePoint(store: BenchStore, name: LandmarkName): void {
  store.setState((state) => {
    const isPlaced = handlePosition(state.edited.document, name) !== null;
    return {
      task: 'landmarks',
      placing: null,
      selected: isPlaced ? name : null,
      guide: isPlaced ? state.guide : chooseStep(state.guide, name),
    };
  });
}

export function select(store: BenchStore, id: HandleId | null): void {
  store.setState({ selected: id });
}

/** Brings a handle to the middle of the canvas, at least at full size. */
export function showHandle(store: BenchStore, id: HandleId): void {
  store.setState((state) => {
    const at = handlePosition(state.edited.document, id);
    return at === null ? {} : { selected: id, view: centreOn(state.view, at, 0, state.picture, state.canvas) };
  });
}

/** An arrow key on the selected handle. `atMs` of a steady clock joins a quick run of them. */
export function nudgeSelected(store: BenchStore, byXPx: number, byYPx: number, atMs: number): boolean {
  const { selected, edited, picture } = store.getState();
  const from = selected === null ? null : handlePosition(edited.document, selected);
  if (selected === null || from === null) return false;
  const to = inside({ xPx: from.xPx + byXPx, yPx: from.yPx + byYPx }, picture);
  store.setState({ edited: nudge(edited, movingLabel(selected), moveHandle(edited.document, selected, to), selected, atMs) });
  return true;
}

export function removeSelected(store: BenchStore): void {
  const { selected } = store.getState();
  if (selected !== null && isLandmarkName(selected)) clearPoints(store, [selected]);
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
  change(store, 'put-back', { ...cleared, ...document });
}

/** The guide asks for the first point that undo or redo has opened, if it had none to ask for. */
function afterTravel(state: BenchState): BenchState {
  const landmarks = landmarksOf(state.edited.document);
  const { current } = state.guide;
  const selectedGone = state.selected !== null && handlePosition(state.edited.document, state.selected) === null;
  const guide = current === null || landmarks[current] !== undefined ? advance({ ...state.guide, current: null }, landmarks) : state.guide;
  return { ...state, selected: selectedGone ? null : state.selected, guide };
}

/** Corners clicked in any order, put in the order in which they run round the rectangle, if they can be one. */
export function inOrder(marks: ScaleMarks): ScaleMarks {
  if (marks.kind === 'two-points') return marks;
  const ordered = orderCorners(marks.corners, marks);
  return ordered.ok ? { ...marks, corners: [...ordered.value] } : marks;
}

/** The corners take the next side of the rectangle for its first: width and height change places. */
export function turnRectangle(store: BenchStore): void {
  const marks = store.getState().edited.document.scale;
  if (marks?.kind !== 'rectangle') return;
  const [first, second, third, fourth] = marks.corners;
  changeScale(store, { ...marks, corners: [second, third, fourth, first] });
}

function isInside(state: BenchState, at: ImagePoint): boolean {
  return at.xPx >= 0 && at.yPx >= 0 && at.xPx <= state.picture.width && at.yPx <= state.picture.height;
}

export function inside(at: ImagePoint, picture: BenchState['picture']): ImagePoint {
  return { xPx: Math.min(picture.width, Math.max(0, at.xPx)), yPx: Math.min(picture.height, Math.max(0, at.yPx)) };
}
