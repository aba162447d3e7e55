import type { CoinScale, ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { pointOn } from '../../../../domain/measuring/ellipse.ts';
import { FREE_DISTANCES, freeLandmarks, LEG_IDS, pointOf } from '../../../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../../../domain/measuring/points.ts';
import type { BenchDocument } from '../../../bench/document.ts';
import { type HandleId, handlePosition, isLandmarkName, landmarkHandlesOf, scaleHandlesOf } from '../../../bench/handles.ts';
import { namesIn } from '../../../bench/steps.ts';
import type { BenchState } from '../../../bench/store.ts';
import type { View } from '../../../bench/view.ts';
import { handleName } from '../benchWords.ts';
import { roundedOutlineOf } from './outline.ts';
import { MARK_COLORS, type Pen, strokeCross, strokeLine, strokeRing, writeBeside } from './strokes.ts';

/** Edge lines run on past the corner by this share of the edge: where two of them meet is the constructed corner. */
const EDGE_EXTENSION = 0.18;
/** A rim is drawn as this many short lines. */
const RIM_POINTS = 90;

/**
 * Draws everything marked on the photo into a cleared canvas of its own. `view` may be that of the loupe; `bare` leaves
 * words and lines away that would hide what the loupe is for.
 */
export function paintMarks(context: CanvasRenderingContext2D, state: BenchState, view: View, pixelRatio: number, bare = false): void {
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
  const pen: Pen = { context, view };
  const { document } = state.edited;
  if (document.scale !== undefined && state.placing === null) paintScale(pen, document.scale, state.task === 'scale', bare);
  if (document.check !== undefined && state.task === 'scale') paintPreview(pen, document.check);
  if (state.preview !== null) paintPreview(pen, state.preview);
  if (state.task !== 'scale') paintReading(pen, document, state, bare);
  paintPlacing(pen, state);
  const selectedAt = state.selected === null ? null : handlePosition(document, state.selected);
  if (state.selected !== null && selectedAt !== null && isLandmarkName(state.selected) === (state.task !== 'scale')) {
    if (!bare) strokeRing(pen, selectedAt, MARK_COLORS.selected, 11);
    strokeCross(pen, selectedAt, MARK_COLORS.selected, bare ? 9 : 8, 2);
    if (!bare && state.edited.pending === null) {
      const words = `${handleName(state.selected)}${isOnEdge(document, state.selected) ? ', on an edge' : ''}`;
      writeBeside(pen, selectedAt, words, MARK_COLORS.selected);
    }
  }
}

function paintScale(pen: Pen, marks: ScaleMarks, inHand: boolean, bare: boolean): void {
  const color = inHand ? MARK_COLORS.scale : MARK_COLORS.faint;
  if (marks.kind === 'two-points') strokeLine(pen, marks.ends, color);
  else if (marks.kind === 'coin') strokeLine(pen, rimOf(marks), color, { closed: true });
  else if (marks.kind === 'points') for (const { at } of marks.points) strokeCross(pen, at, color, 4, 1);
  else if (marks.kind === 'rule-ticks') for (const { from, to } of marks.ticks) strokeLine(pen, [from, to], color, { widthCss: 0.75 });
  else if (inHand) {
    marks.corners.forEach((corner, index) => {
      const next = marks.corners[(index + 1) % 4] ?? corner;
      strokeLine(pen, [between(corner, next, -EDGE_EXTENSION), between(corner, next, 1 + EDGE_EXTENSION)], color, { widthCss: 0.75 });
    });
    const rounded = roundedOutlineOf(marks);
    if (rounded !== null) strokeLine(pen, rounded, color, { dash: [4, 4], closed: true });
  } else strokeLine(pen, marks.corners, color, { dash: [3, 5], closed: true });
  if (!inHand) return;
  for (const { at } of scaleHandlesOf(marks)) {
    if (!bare) strokeRing(pen, at, color, 9);
    strokeCross(pen, at, color, bare ? 9 : 6, 2);
  }
}

/** Marks that are proposed: dashed over black, since coins and cards are often as yellow, and without handles. */
function paintPreview(pen: Pen, marks: ScaleMarks): void {
  const color = MARK_COLORS.proposed;
  const looks = { widthCss: 2, dash: [7, 6], isEdged: true };
  if (marks.kind === 'two-points') strokeLine(pen, marks.ends, color, looks);
  else if (marks.kind === 'coin') strokeLine(pen, rimOf(marks), color, { ...looks, closed: true });
  else if (marks.kind === 'points') for (const { at } of marks.points) strokeCross(pen, at, color, 5, 1);
  else if (marks.kind === 'rule-ticks') for (const { from, to } of marks.ticks) strokeLine(pen, [from, to], color);
  else strokeLine(pen, roundedOutlineOf(marks) ?? marks.corners, color, { ...looks, closed: true });
}

function paintReading(pen: Pen, document: BenchDocument, state: BenchState, bare: boolean): void {
  if (!bare) {
    for (const [one, other] of [
      ['carapace-front', 'carapace-rear'],
      ['carapace-left', 'carapace-right'],
      ...FREE_DISTANCES.map(freeLandmarks),
    ] as const) {
      const ends = [pointOf(document[one]), pointOf(document[other])];
      strokeRun(pen, ends, MARK_COLORS.faint);
    }
    for (const leg of LEG_IDS)
      strokeRun(
        pen,
        namesIn(leg).map((name) => pointOf(document[name])),
        MARK_COLORS.faint,
      );
  }
  for (const ghost of state.ghosts) {
    for (const { at } of landmarkHandlesOf(ghost)) strokeRing(pen, at, MARK_COLORS.faint, 3);
  }
  for (const { id, at } of landmarkHandlesOf(document)) {
    if (id === state.selected) continue;
    const isRegenerated = isLandmarkName(id) && document[id]?.state === 'regenerated';
    const color = isRegenerated ? MARK_COLORS.regenerated : MARK_COLORS.landmark;
    strokeCross(pen, at, color, 5, 1.5);
    if (isOnEdge(document, id)) strokeRing(pen, at, color, 4);
  }
}

/** Whether a point went to the edge beside it: ringed, so that one that did not is told apart. */
function isOnEdge(document: BenchDocument, id: HandleId): boolean {
  const landmark = isLandmarkName(id) ? document[id] : undefined;
  return landmark !== undefined && 'at' in landmark && landmark.pointingPx !== undefined;
}

/** Lines between neighbors that are both placed: a missing joint leaves a gap. */
function strokeRun(pen: Pen, points: readonly (ImagePoint | null)[], color: string): void {
  points.forEach((from, index) => {
    const to = points[index + 1];
    if (from !== null && to !== null && to !== undefined) strokeLine(pen, [from, to], color);
  });
}

function paintPlacing(pen: Pen, { placing, hover }: BenchState): void {
  if (placing === null) return;
  const points = hover === null ? placing.placed : [...placing.placed, hover];
  strokeLine(pen, points, MARK_COLORS.scale, { dash: [4, 4], closed: placing.kind === 'placingCorners' && placing.placed.length === 3 });
  for (const at of placing.placed) strokeCross(pen, at, MARK_COLORS.scale, 7, 2);
}

function rimOf({ rim }: CoinScale): readonly ImagePoint[] {
  return Array.from({ length: RIM_POINTS }, (_, index) => pointOn(rim, (2 * Math.PI * index) / RIM_POINTS));
}

function between(from: ImagePoint, to: ImagePoint, share: number): ImagePoint {
  return { xPx: from.xPx + share * (to.xPx - from.xPx), yPx: from.yPx + share * (to.yPx - from.yPx) };
}
