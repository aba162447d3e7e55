import type { ScaleMarks } from '../../../domain/measuring/calibration.ts';
import { orderCorners } from '../../../domain/measuring/corners.ts';
import { scaleHandlesOf } from '../handles.ts';
import type { BenchStore } from '../store.ts';
import { type PlacingScale, roughMarks, type ScaleRole, startPlacing } from '../tools/placingScale.ts';
import { toImage } from '../view.ts';
import { changeDocument } from './changeDocument.ts';

export function beginPlacingScale(store: BenchStore, object: PlacingScale['object'], as: ScaleRole = 'scale'): void {
  store.setState({ task: 'scale', placing: startPlacing(object), placingAs: as, refining: null, preview: null, selected: null });
}

/** Lets the object go that was being marked. What was the scale before is still there. */
export function dropPlacing(store: BenchStore): void {
  store.setState({ placing: null, besidePicture: null });
}

/** Puts the handles of the chosen object down in the middle of what is visible; each must be touched before they are a scale. */
export function putHandlesDown(store: BenchStore): void {
  const { placing, view, canvas, picture } = store.getState();
  if (placing === null || placing.kind === 'pointingAt') return;
  const first = toImage(view, { xCss: 0, yCss: 0 });
  const last = toImage(view, { xCss: canvas.width, yCss: canvas.height });
  const topLeft = { xPx: Math.max(0, first.xPx), yPx: Math.max(0, first.yPx) };
  const bottomRight = { xPx: Math.min(picture.width, last.xPx), yPx: Math.min(picture.height, last.yPx) };
  const scale = roughMarks(placing.object, { topLeft, bottomRight });
  changeDocument(store, 'place-scale', { scale, roughScale: scaleHandlesOf(scale).map(({ id }) => id) });
  store.setState({ placing: null, selected: placing.kind === 'placingEnds' ? 'end-1' : 'corner-1' });
}

export function changeScale(store: BenchStore, marks: ScaleMarks): void {
  changeDocument(store, 'change-scale', { scale: marks });
}

export function removeScale(store: BenchStore): void {
  changeDocument(store, 'remove-scale', { scale: undefined, roughScale: undefined, check: undefined });
  store.setState({ selected: null });
}

/** Measures by the object that was a check, and checks by the one that was measured by. */
export function swapScales(store: BenchStore): void {
  const { scale, check } = store.getState().edited.document;
  if (scale === undefined || check === undefined) return;
  changeDocument(store, 'swap-scales', { scale: check, check: scale });
  store.setState({ selected: null, refining: null });
}

export function removeCheck(store: BenchStore): void {
  changeDocument(store, 'remove-check', { check: undefined });
}

/** The corners take the next side of the rectangle for its first: width and height change places. */
export function turnRectangle(store: BenchStore): void {
  const marks = store.getState().edited.document.scale;
  if (marks?.kind !== 'rectangle') return;
  const [first, second, third, fourth] = marks.corners;
  const turned = { ...marks, corners: [second, third, fourth, first] satisfies typeof marks.corners };
  changeScale(store, marks.sidePoints === undefined ? turned : { ...turned, sidePoints: fromTheSecond(marks.sidePoints) });
}

function fromTheSecond<Value>([first, second, third, fourth]: [Value, Value, Value, Value]): [Value, Value, Value, Value] {
  return [second, third, fourth, first];
}

/** Corners clicked in any order, put in the order in which they run round the rectangle, if they can be one. */
export function inOrder(marks: ScaleMarks): ScaleMarks {
  if (marks.kind !== 'rectangle') return marks;
  const ordered = orderCorners(marks.corners, marks);
  return ordered.ok ? { ...marks, corners: [...ordered.value] } : marks;
}
