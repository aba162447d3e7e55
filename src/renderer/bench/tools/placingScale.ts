import type { RectangleScale, ScaleMarks, TwoPointScale } from '../../../domain/measuring/calibration.ts';
import type { ImagePoint } from '../../../domain/measuring/points.ts';

/** The scale object is chosen, and its points are being clicked one after another. */
export type PlacingScale =
  | { readonly kind: 'placingEnds'; readonly object: Omit<TwoPointScale, 'ends'>; readonly placed: readonly ImagePoint[] }
  | { readonly kind: 'placingCorners'; readonly object: Omit<RectangleScale, 'corners'>; readonly placed: readonly ImagePoint[] };

export function startPlacing(object: PlacingScale['object']): PlacingScale {
  if (object.kind === 'two-points') return { kind: 'placingEnds', object, placed: [] };
  return { kind: 'placingCorners', object, placed: [] };
}

/** One more click. Answers the marks, corners in the order of clicking, as soon as there are points enough. */
export function placeScalePoint(placing: PlacingScale, at: ImagePoint): { placing: PlacingScale | null; marks: ScaleMarks | null } {
  const [first, second, third, fourth] = [...placing.placed, at];
  if (placing.kind === 'placingEnds') {
    if (first !== undefined && second !== undefined) return { placing: null, marks: { ...placing.object, ends: [first, second] } };
  } else if (first !== undefined && second !== undefined && third !== undefined && fourth !== undefined) {
    return { placing: null, marks: { ...placing.object, corners: [first, second, third, fourth] } };
  }
  return { placing: { ...placing, placed: [...placing.placed, at] }, marks: null };
}

/** Takes the last click back; null when there was none, which ends the placing. */
export function takeBackScalePoint(placing: PlacingScale): PlacingScale | null {
  return placing.placed.length === 0 ? null : { ...placing, placed: placing.placed.slice(0, -1) };
}

/**
 * Marks put down without clicking, to be dragged into place: in a region of the photo (the visible part), upright, as
 * large as three fifths of it allow.
 */
export function roughMarks(
  object: PlacingScale['object'],
  region: { readonly topLeft: ImagePoint; readonly bottomRight: ImagePoint },
): ScaleMarks {
  const across = 0.6 * (region.bottomRight.xPx - region.topLeft.xPx);
  const down = 0.6 * (region.bottomRight.yPx - region.topLeft.yPx);
  const middle = { xPx: (region.topLeft.xPx + region.bottomRight.xPx) / 2, yPx: (region.topLeft.yPx + region.bottomRight.yPx) / 2 };
  const from = (right: number, below: number): ImagePoint => ({ xPx: middle.xPx + right, yPx: middle.yPx + below });
  if (object.kind === 'two-points') return { ...object, ends: [from(-across / 2, 0), from(across / 2, 0)] };
  const pxPerMm = Math.min(across / object.widthMm, down / object.heightMm);
  const right = (pxPerMm * object.widthMm) / 2;
  const below = (pxPerMm * object.heightMm) / 2;
  return { ...object, corners: [from(-right, -below), from(right, -below), from(right, below), from(-right, below)] };
}
