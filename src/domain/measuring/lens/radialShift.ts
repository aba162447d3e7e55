import type { ImagePoint } from '../points.ts';

/** Distortion with one parameter (Brown 1971, Photogrammetric Engineering 37:855): the shift grows with the cube of the distance. */
export interface RadialShift {
  /** The middle of the picture. */
  readonly centre: ImagePoint;
  /** From the middle to a corner. */
  readonly cornerPx: number;
  /** Of a point in the corner, away from the middle, over `cornerPx`. */
  readonly cornerShare: number;
}

export function radialShiftOf(
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
  cornerShare: number,
): RadialShift {
  return { centre: { xPx: widthPx / 2, yPx: heightPx / 2 }, cornerPx: Math.hypot(widthPx, heightPx) / 2, cornerShare };
}

/** Where a point goes. */
export function shifted({ xPx, yPx }: ImagePoint, { centre, cornerPx, cornerShare }: RadialShift): ImagePoint {
  const [x, y] = [xPx - centre.xPx, yPx - centre.yPx];
  const factor = 1 + (cornerShare * (x * x + y * y)) / (cornerPx * cornerPx);
  return { xPx: centre.xPx + x * factor, yPx: centre.yPx + y * factor };
}

/** Whether a point lies so far out that a lens which draws inward brings what is farther out nearer again: no photo shows it. */
export function foldsBack({ xPx, yPx }: ImagePoint, { centre, cornerPx, cornerShare }: RadialShift): boolean {
  const [x, y] = [xPx - centre.xPx, yPx - centre.yPx];
  return cornerPx * cornerPx + 3 * cornerShare * (x * x + y * y) <= 0;
}

/** Rounds of Newton's method: each doubles the digits, from a start that is a few per cent off. */
const ROUNDS = 6;

/** Where a point came from that the lens has shifted: the inverse of `shifted`, as far out as that is one. */
export function unshifted({ xPx, yPx }: ImagePoint, { centre, cornerPx, cornerShare }: RadialShift): ImagePoint {
  const [x, y] = [xPx - centre.xPx, yPx - centre.yPx];
  const seen = Math.hypot(x, y) / cornerPx;
  if (seen === 0) return { xPx, yPx };
  let was = seen;
  for (let round = 0; round < ROUNDS; round += 1) {
    was -= (was * (1 + cornerShare * was * was) - seen) / (1 + 3 * cornerShare * was * was);
  }
  return { xPx: centre.xPx + (x * was) / seen, yPx: centre.yPx + (y * was) / seen };
}
