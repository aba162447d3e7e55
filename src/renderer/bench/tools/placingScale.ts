import type { Disk, Graduation, RoughScale } from '../../../domain/finding/refinement.ts';
import type { RectangleScale, ScaleMarks, TwoPointScale } from '../../../domain/measuring/calibration.ts';
import type { ImagePoint } from '../../../domain/measuring/points.ts';

/** Objects that are measured by where the keeper marks them. */
export type MarkedObject = Omit<TwoPointScale, 'ends'> | Omit<RectangleScale, 'corners'>;

/** Objects that the keeper points at, to have them found exactly. */
export type PointedObject =
  | {
      readonly kind: 'rule';
      readonly graduation: Graduation;
      readonly heightMm: number;
      readonly faceHeightStandardUncertaintyMm?: number | undefined;
    }
  /** By its middle alone, or by three points of its rim. */
  | { readonly kind: 'coin'; readonly disk: Disk; readonly by: 'middle' | 'rim' };

/** What the object being marked is for: to measure by, or to check that object by. */
export type ScaleRole = 'scale' | 'check';

/** The scale object is chosen, and its points are being clicked one after another. */
export type PlacingScale =
  | { readonly kind: 'placingEnds'; readonly object: Omit<TwoPointScale, 'ends'>; readonly placed: readonly ImagePoint[] }
  | { readonly kind: 'placingCorners'; readonly object: Omit<RectangleScale, 'corners'>; readonly placed: readonly ImagePoint[] }
  | { readonly kind: 'pointingAt'; readonly object: PointedObject; readonly placed: readonly ImagePoint[] };

export type ScaleObject = PlacingScale['object'];

export function startPlacing(object: ScaleObject): PlacingScale {
  if (object.kind === 'two-points') return { kind: 'placingEnds', object, placed: [] };
  if (object.kind === 'rectangle') return { kind: 'placingCorners', object, placed: [] };
  return { kind: 'pointingAt', object, placed: [] };
}

/** How many clicks the object takes. */
export function clicksFor(object: ScaleObject): number {
  if (object.kind === 'rectangle') return 4;
  if (object.kind === 'coin') return object.by === 'rim' ? 3 : 1;
  return 2;
}

interface Placed {
  /** Null when there are points enough. */
  readonly placing: PlacingScale | null;
  /** Corners in the order of clicking. */
  readonly marks: ScaleMarks | null;
  /** What is to be found in the picture from these clicks. */
  readonly rough: RoughScale | null;
}

/** One more click. */
export function placeScalePoint(placing: PlacingScale, at: ImagePoint): Placed {
  const placed = [...placing.placed, at];
  if (placed.length < clicksFor(placing.object)) return { placing: { ...placing, placed }, marks: null, rough: null };
  if (placing.kind === 'pointingAt') return { placing: null, marks: null, rough: roughFrom(placing.object, placed) };
  return { placing: null, marks: marksFrom(placing.object, placed), rough: null };
}

function marksFrom(object: MarkedObject, [first, second, third, fourth]: readonly ImagePoint[]): ScaleMarks | null {
  if (first === undefined || second === undefined) return null;
  if (object.kind === 'two-points') return { ...object, ends: [first, second] };
  return third === undefined || fourth === undefined ? null : { ...object, corners: [first, second, third, fourth] };
}

function roughFrom(object: PointedObject, [first, second, third]: readonly ImagePoint[]): RoughScale | null {
  if (first === undefined) return null;
  if (object.kind === 'coin') {
    const at: Extract<RoughScale, { kind: 'coin' }>['at'] = second && third ? [first, second, third] : [first];
    return { kind: 'coin', disk: object.disk, at };
  }
  return second === undefined ? null : { ...object, ends: [first, second] };
}

/** Takes the last click back; null when there was none, which ends the placing. */
export function takeBackScalePoint(placing: PlacingScale): PlacingScale | null {
  return placing.placed.length === 0 ? null : { ...placing, placed: placing.placed.slice(0, -1) };
}

/**
 * Marks put down without clicking, to be dragged into place: in a region of the photo (the visible part), upright, as
 * large as three fifths of it allow.
 */
export function roughMarks(object: MarkedObject, region: { readonly topLeft: ImagePoint; readonly bottomRight: ImagePoint }): ScaleMarks {
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
