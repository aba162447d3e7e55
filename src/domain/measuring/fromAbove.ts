import type { Matrix3 } from '../numerics/matrix3.ts';
import type { Calibration } from './calibrate.ts';
import { toPlane } from './onPlane.ts';
import { type PhotoMap, photoMapOf } from './photoMap.ts';
import type { ImagePoint, PlanePoint } from './points.ts';

/** A picture of the plane of the scale object's face as if seen from straight above, at one scale everywhere. */
export interface ViewFromAbove {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
  /** The place at the top left corner of the top left pixel, in the frame of the plane turned by quarters as the view is. */
  readonly topLeft: PlanePoint;
  /** Where its pixels lie in the photo. */
  readonly toPhoto: PhotoMap;
}

/** No side of a view is longer: more is neither seen nor held by every browser's canvas. */
const LONGEST_PX = 4096;

/** The plane is looked at no more obliquely than this from its normal: beyond, a pixel stretches over centimeters. Own judgment. */
const MOST_OBLIQUE_DEG = 70;
const POINTS_A_SIDE = 24;

/** Points round the border of the picture, to see all of it from above; without those that look across the plane. */
export function borderOfPicture(
  calibration: Pick<Calibration, 'view'>,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
): readonly ImagePoint[] {
  const { foot, heightMm } = calibration.view.station;
  const farthestMm = heightMm * Math.tan((MOST_OBLIQUE_DEG * Math.PI) / 180);
  const shares = Array.from({ length: POINTS_A_SIDE }, (_, index) => index / POINTS_A_SIDE);
  const border = shares.flatMap((share) => [
    { xPx: share * widthPx, yPx: 0 },
    { xPx: widthPx, yPx: share * heightPx },
    { xPx: (1 - share) * widthPx, yPx: heightPx },
    { xPx: 0, yPx: (1 - share) * heightPx },
  ]);
  return border.filter((at) => {
    const place = toPlane(calibration, at);
    return place !== null && Math.hypot(place.xMm - foot.xMm, place.yMm - foot.yMm) <= farthestMm;
  });
}

/** Cosine and sine of the turns by quarters. */
const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** The quarter turn nearest to where the photo's right runs in the plane. */
function quarterOf(calibration: Pick<Calibration, 'view'>, at: ImagePoint): (typeof QUARTERS)[number] {
  const [from, to] = [toPlane(calibration, at), toPlane(calibration, { ...at, xPx: at.xPx + 1 })];
  if (from === null || to === null) return QUARTERS[0];
  const along = ([cosine, sine]: (typeof QUARTERS)[number]): number => cosine * (to.xMm - from.xMm) + sine * (to.yMm - from.yMm);
  return QUARTERS.reduce((best, quarter) => (along(quarter) > along(best) ? quarter : best));
}

/**
 * What the plane looks like from straight above. Only what lies on it is at scale: whatever rises towards the camera is drawn
 * too large and displaced.
 *
 * @param shown points of the photo that must be seen in it, with the scale object itself.
 * @param marginMm around all of them.
 * @param pxPerMm at most; fewer where the view would become too large.
 * @param uprightAt where in the photo its right is to be the right of the view, to the nearest quarter turn; left out, the plane's own axes are.
 * @returns null when nothing of it lies on the visible side of the horizon.
 */
export function viewFromAbove(
  calibration: Pick<Calibration, 'view' | 'outline'>,
  shown: readonly ImagePoint[],
  marginMm: number,
  pxPerMm: number,
  uprightAt?: ImagePoint,
): ViewFromAbove | null {
  const [cosine, sine] = uprightAt === undefined ? QUARTERS[0] : quarterOf(calibration, uprightAt);
  const turned = ({ xMm, yMm }: PlanePoint): PlanePoint => ({ xMm: cosine * xMm + sine * yMm, yMm: cosine * yMm - sine * xMm });
  const points = [...calibration.outline, ...shown.flatMap((at) => toPlane(calibration, at) ?? [])].map(turned);
  if (points.length === 0) return null;
  const xs = points.map(({ xMm }) => xMm);
  const ys = points.map(({ yMm }) => yMm);
  const topLeft = { xMm: Math.floor(Math.min(...xs) - marginMm), yMm: Math.floor(Math.min(...ys) - marginMm) };
  const widthMm = Math.ceil(Math.max(...xs) + marginMm) - topLeft.xMm;
  const heightMm = Math.ceil(Math.max(...ys) + marginMm) - topLeft.yMm;
  const scale = Math.min(pxPerMm, LONGEST_PX / Math.max(widthMm, heightMm));
  const toPlaneMm: Matrix3 = [
    cosine / scale,
    -sine / scale,
    cosine * topLeft.xMm - sine * topLeft.yMm,
    sine / scale,
    cosine / scale,
    sine * topLeft.xMm + cosine * topLeft.yMm,
    0,
    0,
    1,
  ];
  return {
    widthPx: Math.round(widthMm * scale),
    heightPx: Math.round(heightMm * scale),
    pxPerMm: scale,
    topLeft,
    toPhoto: photoMapOf(calibration.view, toPlaneMm),
  };
}
