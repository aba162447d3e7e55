import { adjugate, type Matrix3, multiply, transposed } from '../numerics/matrix3.ts';
import type { ImagePoint } from './points.ts';

/** An ellipse in the upright picture. */
export interface Ellipse {
  readonly centre: ImagePoint;
  readonly semiMajorPx: number;
  readonly semiMinorPx: number;
  /** From the x axis to the major axis, turning towards y (clockwise on the screen), in [0, pi). */
  readonly angleRad: number;
}

/** A x^2 + B x y + C y^2 + D x + E y + F = 0 */
export type Conic = readonly [number, number, number, number, number, number];

/** The ellipse of a conic; null for a hyperbola, a parabola, or one without real points. */
export function ellipseOf([a, b, c, d, e, f]: Conic): Ellipse | null {
  const determinant = 4 * a * c - b * b;
  if (!(determinant > 0)) return null;
  const xPx = (b * e - 2 * c * d) / determinant;
  const yPx = (b * d - 2 * a * e) / determinant;
  const atCenter = f + (d * xPx + e * yPx) / 2;
  // Eigenvalues of [a b/2; b/2 c]; the smaller belongs to the major axis.
  const half = Math.hypot(a - c, b) / 2;
  const sign = a + c > 0 ? 1 : -1;
  const small = sign * ((a + c) / 2) - half;
  const large = sign * ((a + c) / 2) + half;
  const level = -sign * atCenter;
  if (!(level > 0 && small > 0)) return null;
  // The direction of the larger eigenvalue is at atan2(b, a - c) / 2, the major axis at right angles to it.
  const towardsMinor = Math.atan2(sign * b, sign * (a - c)) / 2;
  return {
    centre: { xPx, yPx },
    semiMajorPx: Math.sqrt(level / small),
    semiMinorPx: Math.sqrt(level / large),
    angleRad: withinHalfTurn(towardsMinor + Math.PI / 2),
  };
}

/** The symmetric matrix Q with (x, y, 1) Q (x, y, 1)' < 0 inside and = 0 on the ellipse. */
export function matrixOf({ centre, semiMajorPx, semiMinorPx, angleRad }: Ellipse): Matrix3 {
  const cos = Math.cos(angleRad);
  const sin = Math.sin(angleRad);
  const p = 1 / semiMajorPx ** 2;
  const q = 1 / semiMinorPx ** 2;
  const a = p * cos * cos + q * sin * sin;
  const b = (p - q) * cos * sin;
  const c = p * sin * sin + q * cos * cos;
  const d = -(a * centre.xPx + b * centre.yPx);
  const e = -(b * centre.xPx + c * centre.yPx);
  return [a, b, d, b, c, e, d, e, -(d * centre.xPx + e * centre.yPx) - 1];
}

/** What a map makes of an ellipse, in the units that it maps to; null when that is none. */
export function ellipseThrough(map: Matrix3, ellipse: Ellipse): Ellipse | null {
  const back = adjugate(map);
  const [a, b, c, , d, e, , , f] = multiply(transposed(back), multiply(matrixOf(ellipse), back));
  return ellipseOf([a, 2 * b, d, 2 * c, 2 * e, f]);
}

/** The point at an eccentric angle, rad, counted from the major axis. */
export function pointOn({ centre, semiMajorPx, semiMinorPx, angleRad }: Ellipse, eccentricRad: number): ImagePoint {
  const along = semiMajorPx * Math.cos(eccentricRad);
  const across = semiMinorPx * Math.sin(eccentricRad);
  return {
    xPx: centre.xPx + along * Math.cos(angleRad) - across * Math.sin(angleRad),
    yPx: centre.yPx + along * Math.sin(angleRad) + across * Math.cos(angleRad),
  };
}

/** Outward unit normal at an eccentric angle. */
export function normalAt(
  { semiMajorPx, semiMinorPx, angleRad }: Ellipse,
  eccentricRad: number,
): { readonly x: number; readonly y: number } {
  const along = semiMinorPx * Math.cos(eccentricRad);
  const across = semiMajorPx * Math.sin(eccentricRad);
  const length = Math.hypot(along, across);
  return {
    x: (along * Math.cos(angleRad) - across * Math.sin(angleRad)) / length,
    y: (along * Math.sin(angleRad) + across * Math.cos(angleRad)) / length,
  };
}

/**
 * Eccentric angle of the point of the ellipse nearest to a point, by Newton on the distance's derivative from the angle
 * of the point itself; that start lies in the nearest point's quadrant, where the distance has one minimum.
 */
export function nearestAngle({ centre, semiMajorPx: a, semiMinorPx: b, angleRad }: Ellipse, at: ImagePoint): number {
  const x = (at.xPx - centre.xPx) * Math.cos(angleRad) + (at.yPx - centre.yPx) * Math.sin(angleRad);
  const y = -(at.xPx - centre.xPx) * Math.sin(angleRad) + (at.yPx - centre.yPx) * Math.cos(angleRad);
  const [u, v] = [Math.abs(x), Math.abs(y)];
  let low = 0;
  let high = Math.PI / 2;
  let t = Math.atan2(a * v, b * u);
  for (let round = 0; round < 40; round += 1) {
    const [sin, cos] = [Math.sin(t), Math.cos(t)];
    const slope = (b * b - a * a) * sin * cos + a * u * sin - b * v * cos;
    if (slope > 0) high = t;
    else low = t;
    const bend = (b * b - a * a) * (cos * cos - sin * sin) + a * u * cos + b * v * sin;
    const newton = t - slope / bend;
    const next = bend > 0 && newton >= low && newton <= high ? newton : (low + high) / 2;
    const moved = Math.abs(next - t);
    t = next;
    if (moved < 1e-14) break;
  }
  return Math.atan2((y < 0 ? -1 : 1) * Math.sin(t), (x < 0 ? -1 : 1) * Math.cos(t));
}

export function withinHalfTurn(angleRad: number): number {
  const turned = angleRad % Math.PI;
  return turned < 0 ? turned + Math.PI : turned;
}
