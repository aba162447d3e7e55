import {
  DORSAL_SKIN_PROTOCOL,
  type LandmarkName,
  type Landmarks,
  LEG_IDS,
  LEG_JOINTS,
  type LegId,
  legLandmark,
  pointOf,
} from '../measuring/landmarks.ts';
import { type RadialShift, unshifted } from '../measuring/lens/radialShift.ts';
import type { ImagePoint, PlanePoint } from '../measuring/points.ts';
import { planePointOf, type View } from '../measuring/view.ts';
import { type Matrix3, multiply, scale, transform } from '../numerics/matrix3.ts';
import { type Extent, extentOf, intersection, longerSide, union, widened } from './extent.ts';

/** A photo brought to the plane of its scale object, turned so that the animal's head is up, and cut round the animal. */
export interface Plate {
  /** Takes (xPx, yPx, 1) of the photo to mm from the plate's top left corner, x right, y down; the factor is positive on the plate. */
  readonly toPlateMm: Matrix3;
  /** What the lens did to the photo, to be undone before `toPlateMm`; left out where no lens is corrected. */
  readonly radialShift?: RadialShift | undefined;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Middle of the carapace from the top edge; the middle of the plate where no carapace is marked. */
  readonly carapaceAtMm: number;
  /** Likewise from the left edge. */
  readonly carapaceFromLeftMm: number;
  /** false where nothing is marked that says which way the animal lies. */
  readonly turned: boolean;
}

/** Room left round the outermost landmark, as a share of the larger side. */
const MARGIN_SHARE = 0.06;
/** Legs not marked yet are looked for this far from the middle of the carapace, in carapace lengths: leg IV, the longest, has about 2.8 from femur to tarsus. */
const REACH_IN_CARAPACE_LENGTHS = 3.6;

/**
 * @param photo size of the upright photo, px.
 * @param view how photo and plane of the scale object belong together; not mirrored.
 * @param landmarks of the reading that is shown, or null.
 * @returns null where the horizon of the plane runs through the photo, so that it has no flat view.
 */
export function plateOf(
  photo: { widthPx: number; heightPx: number },
  { imageToPlane, radialShift }: Pick<View, 'imageToPlane' | 'radialShift'>,
  landmarks: Landmarks | null,
): Plate | null {
  const straight = (at: ImagePoint): ImagePoint => (radialShift ? unshifted(at, radialShift) : at);
  const { widthPx, heightPx } = photo;
  const middle = { xPx: widthPx / 2, yPx: heightPx / 2 };
  const front = pointAt(landmarks, 'carapace-front');
  const rear = pointAt(landmarks, 'carapace-rear');
  const direction: Axis | null = front && rear ? { front: straight(front), rear: straight(rear) } : null;
  const { front: ahead, rear: behind } = direction ?? { front: middle, rear: { xPx: middle.xPx, yPx: middle.yPx + 1 } };
  const ends = laidFlat(imageToPlane, [ahead, behind]);
  const [to, from] = ends ?? [];
  if (!to || !from || (to.xMm === from.xMm && to.yMm === from.yMm)) return null;

  const toUpright = multiply(turningUp(to.xMm - from.xMm, to.yMm - from.yMm), unitFactorAt(imageToPlane, ahead));
  // A lens bends the sides of the photo: their middles may lie farther out than its corners.
  const rim = [0, widthPx / 2, widthPx].flatMap((xPx) => [0, heightPx / 2, heightPx].map((yPx) => straight({ xPx, yPx })));
  const whole = laidFlat(toUpright, rim);
  const marked = laidFlat(toUpright, landmarks ? pointsIn(landmarks).map(straight) : []);
  const carapace = direction && laidFlat(toUpright, [direction.front, direction.rear]);
  if (!whole || !marked) return null;

  const shown = landmarks && carapace ? animalExtent(landmarks, marked, extentOf(carapace), extentOf(whole)) : extentOf(whole);
  const aroundCarapace = carapace ? extentOf(carapace) : shown;
  return {
    radialShift,
    toPlateMm: multiply([1, 0, -shown.left, 0, 1, -shown.top, 0, 0, 1], toUpright),
    widthMm: shown.right - shown.left,
    heightMm: shown.bottom - shown.top,
    carapaceAtMm: (aroundCarapace.top + aroundCarapace.bottom) / 2 - shown.top,
    carapaceFromLeftMm: (aroundCarapace.left + aroundCarapace.right) / 2 - shown.left,
    turned: carapace !== null,
  };
}

interface Axis {
  readonly front: ImagePoint;
  readonly rear: ImagePoint;
}

/** All marked points with a margin; where legs are still to be marked, as far as legs reach, but not beyond the photo. */
function animalExtent(landmarks: Landmarks, marked: readonly PlanePoint[], carapace: Extent, whole: Extent): Extent {
  const tight = extentOf(marked);
  const padded = widened(tight, MARGIN_SHARE * longerSide(tight));
  if (LEG_IDS.every((leg) => isSettled(landmarks, leg))) return intersection(padded, whole);
  const middle = { xMm: (carapace.left + carapace.right) / 2, yMm: (carapace.top + carapace.bottom) / 2 };
  const reached = widened(extentOf([middle]), REACH_IN_CARAPACE_LENGTHS * longerSide(carapace));
  return intersection(union(padded, reached), whole);
}

/** The tip is marked, or the leg is said to be missing. */
function isSettled(landmarks: Landmarks, leg: LegId): boolean {
  return (
    pointAt(landmarks, legLandmark(leg, 'tarsus-tip')) !== null ||
    LEG_JOINTS.some((joint) => landmarks[legLandmark(leg, joint)]?.state === 'missing')
  );
}

function pointsIn(landmarks: Landmarks): ImagePoint[] {
  return DORSAL_SKIN_PROTOCOL.map((name) => pointAt(landmarks, name)).filter((point) => point !== null);
}

function pointAt(landmarks: Landmarks | null, name: LandmarkName): ImagePoint | null {
  return pointOf(landmarks?.[name]);
}

/** All points on the plane, or null when one of them lies beyond its horizon. */
function laidFlat(matrix: Matrix3, points: readonly ImagePoint[]): PlanePoint[] | null {
  const flat = points.map((point) => planePointOf(matrix, point)).filter((point) => point !== null);
  return flat.length === points.length ? flat : null;
}

/** The same map with factor 1 at a point, so that the numbers handed to the browser stay near one. */
function unitFactorAt(matrix: Matrix3, { xPx, yPx }: ImagePoint): Matrix3 {
  return scale(matrix, 1 / transform(matrix, xPx, yPx, 1)[2]);
}

/** The rotation that takes a direction to straight up, (0, -1). */
function turningUp(x: number, y: number): Matrix3 {
  const length = Math.hypot(x, y);
  const [cos, sin] = [-y / length, x / length];
  return [cos, sin, 0, -sin, cos, 0, 0, 0, 1];
}
