import type { CoinScale } from './calibration.ts';
import { type Ellipse, withinHalfTurn } from './ellipse.ts';

/** How far a rim is from a circle: greater minus lesser radius, px, with twice its direction as a vector. Noise moves both parts alike. */
export interface Elongation {
  readonly alongPx: number;
  readonly acrossPx: number;
}

export function elongationOf({ semiMajorPx, semiMinorPx, angleRad }: Ellipse): Elongation {
  const differencePx = semiMajorPx - semiMinorPx;
  return { alongPx: differencePx * Math.cos(2 * angleRad), acrossPx: differencePx * Math.sin(2 * angleRad) };
}

/** The rim of the same middle and mean radius with another elongation; its lesser radius may be negative, which is no rim's. */
export function withElongation(rim: Ellipse, { alongPx, acrossPx }: Elongation): Ellipse {
  const mean = (rim.semiMajorPx + rim.semiMinorPx) / 2;
  const half = Math.hypot(alongPx, acrossPx) / 2;
  return {
    centre: rim.centre,
    semiMajorPx: mean + half,
    semiMinorPx: mean - half,
    angleRad: withinHalfTurn(Math.atan2(acrossPx, alongPx) / 2),
  };
}

/**
 * Standard uncertainty of each part of the elongation, px. `rimPx` is that of a displacement all around by sqrt(2) cos or sin of twice
 * the angle, as large in the mean square as one of the radius; the radii then differ by twice its greatest.
 */
export function elongationUncertaintyPx({ rimPx }: Pick<CoinScale, 'rimPx'>): number {
  return 2 * Math.SQRT2 * rimPx;
}
