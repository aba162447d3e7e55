import { adjugate, type Matrix3, multiply, scale, transform } from '../numerics/matrix3.ts';
import { foldsBack, type RadialShift, shifted } from './lens/radialShift.ts';
import type { ImagePoint } from './points.ts';
import type { View } from './view.ts';

/** Where the places of a picture that is drawn anew lie in the photo: a projective map, and after it what the lens did. */
export interface PhotoMap {
  /**
   * Takes (x, y, 1) of the drawn picture, the center of its top left pixel at (0.5, 0.5), to the photo as a lens without
   * distortion would have made it, times a factor that is positive on the visible side of the horizon.
   */
  readonly toPinhole: Matrix3;
  /** In pixels of the photo; left out where the calibration corrects no lens. */
  readonly radialShift?: RadialShift | undefined;
}

/** @param toPlane takes (x, y, 1) of the drawn picture to mm of the plane, with a positive factor. */
export function photoMapOf({ imageToPlane: m, radialShift }: Pick<View, 'imageToPlane' | 'radialShift'>, toPlane: Matrix3): PhotoMap {
  const back = adjugate(m);
  const determinant = m[0] * back[0] + m[1] * back[3] + m[2] * back[6];
  return { toPinhole: multiply(scale(back, 1 / determinant), toPlane), radialShift };
}

/** The place in the photo; null beyond the horizon, and so far out that the lens would have folded the picture back. */
export function photoPointOf({ toPinhole, radialShift }: PhotoMap, xPx: number, yPx: number): ImagePoint | null {
  const [x, y, factor] = transform(toPinhole, xPx, yPx, 1);
  if (!(factor > 0)) return null;
  const at = { xPx: x / factor, yPx: y / factor };
  if (radialShift === undefined) return at;
  return foldsBack(at, radialShift) ? null : shifted(at, radialShift);
}

/** The same map onto a copy of the photo that has `factor` times its size. */
export function ontoCopy({ toPinhole, radialShift }: PhotoMap, factor: number): PhotoMap {
  return {
    toPinhole: multiply([factor, 0, 0, 0, factor, 0, 0, 0, 1], toPinhole),
    radialShift: radialShift && {
      centre: { xPx: factor * radialShift.centre.xPx, yPx: factor * radialShift.centre.yPx },
      cornerPx: factor * radialShift.cornerPx,
      cornerShare: radialShift.cornerShare,
    },
  };
}
