import type { RectangleScale, ScaleMarks, TwoPointScale } from '../../domain/measuring/calibration.ts';
import { ALL_LANDMARKS, type LandmarkName, type Landmarks, pointOf } from '../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';
import { DEFAULT_POINTING_PX } from '../../domain/measuring/reading.ts';
import type { Patch } from './change.ts';
import type { BenchDocument, BenchEntries } from './document.ts';
import type { ChangeLabel } from './history.ts';
import { CORNER_IDS, END_IDS, type ScaleHandleId } from './scaleIds.ts';
import { distance, toView, type View, type ViewPoint } from './view.ts';

/** Whatever can be taken hold of on the photo. */
export type HandleId = ScaleHandleId | LandmarkName;

export interface Handle<Id extends HandleId = HandleId> {
  readonly id: Id;
  readonly at: ImagePoint;
}

export function isLandmarkName(id: HandleId): id is LandmarkName {
  return ALL_LANDMARKS.some((name) => name === id);
}

export function scaleHandlesOf(marks: ScaleMarks | undefined): Handle<ScaleHandleId>[] {
  if (marks === undefined) return [];
  if (marks.kind === 'two-points') return zip(END_IDS, marks.ends);
  // A rim and the points of a pattern are found, not dragged.
  return marks.kind === 'rectangle' ? zip(CORNER_IDS, marks.corners) : [];
}

export function landmarkHandlesOf(document: Landmarks): Handle[] {
  return ALL_LANDMARKS.flatMap((id) => {
    const at = pointOf(document[id]);
    return at === null ? [] : [{ id, at }];
  });
}

export function handlePosition(document: BenchDocument, id: HandleId): ImagePoint | null {
  if (isLandmarkName(id)) return pointOf(document[id]);
  return scaleHandlesOf(document.scale).find((handle) => handle.id === id)?.at ?? null;
}

/** The change that puts a handle somewhere; empty when there is no such handle. */
export function moveHandle(document: BenchDocument, id: HandleId, to: ImagePoint): Patch<BenchEntries> {
  if (!isLandmarkName(id)) {
    return document.scale === undefined ? {} : { scale: withHandleAt(document.scale, id, to), ...confirmHandle(document, id) };
  }
  const landmark = document[id];
  if (landmark === undefined || !('at' in landmark)) return {};
  // How well an edge was found, or a place was aimed at, says nothing about the one that is chosen now.
  const { pointingPx: _, aimedPx: __, ...kept } = landmark;
  return { [id]: { ...kept, at: to } };
}

/** The change that says of a handle put down roughly that it lies where it should. */
export function confirmHandle(document: BenchDocument, id: ScaleHandleId): Patch<BenchEntries> {
  const left = document.roughScale?.filter((rough) => rough !== id) ?? [];
  return { roughScale: left.length === 0 ? undefined : left };
}

export function movingLabel(id: HandleId): ChangeLabel {
  return isLandmarkName(id) ? 'move-point' : 'move-scale';
}

/** The handle under the pointer: the nearest within `reachCss` CSS pixels, or null. */
export function handleUnder(handles: readonly Handle[], view: View, at: ViewPoint, reachCss: number): Handle | null {
  let nearest: Handle | null = null;
  let nearestCss = reachCss;
  for (const handle of handles) {
    const awayCss = distance(toView(view, handle.at), at);
    if (awayCss <= nearestCss) {
      nearest = handle;
      nearestCss = awayCss;
    }
  }
  return nearest;
}

/** No hand places a corner better than this, px: finer figures come from a fit to the edges, which a hand undoes. */
const FINEST_HAND_PX = 0.4;

function withHandleAt(marks: ScaleMarks, id: ScaleHandleId, to: ImagePoint): ScaleMarks {
  if (marks.kind === 'two-points') {
    const ends: TwoPointScale['ends'] = [id === 'end-1' ? to : marks.ends[0], id === 'end-2' ? to : marks.ends[1]];
    return { ...marks, ends };
  }
  if (marks.kind !== 'rectangle') return marks;
  const [first, second, third, fourth] = marks.corners;
  const corners: RectangleScale['corners'] = [
    id === 'corner-1' ? to : first,
    id === 'corner-2' ? to : second,
    id === 'corner-3' ? to : third,
    id === 'corner-4' ? to : fourth,
  ];
  const isFitted = marks.pointingPx < FINEST_HAND_PX;
  // The corners no longer come from the sides that were found.
  const { sidePoints: _, ...byHand } = marks;
  return { ...byHand, corners, pointingPx: isFitted ? DEFAULT_POINTING_PX : marks.pointingPx };
}

function zip(ids: readonly ScaleHandleId[], points: readonly ImagePoint[]): Handle<ScaleHandleId>[] {
  return ids.flatMap((id, index) => {
    const at = points[index];
    return at === undefined ? [] : [{ id, at }];
  });
}
