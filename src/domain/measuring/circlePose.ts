import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { cross, dot, type Matrix3, norm, type Vector3 } from '../numerics/matrix3.ts';
import type { Lens } from './camera.ts';
import { type Ellipse, matrixOf } from './ellipse.ts';

/** A circle in space, seen from the camera (x right, y down, z forward; mm). */
export interface CirclePose {
  readonly centre: Vector3;
  /** Unit vector at right angles to the circle's plane, pointing away from the camera: z > 0 unless the plane is seen edge-on. */
  readonly normal: Vector3;
  /** Direction in the picture, rad from x towards y, from the rim's middle to the part of the rim that is nearest to the camera. */
  readonly nearEdgeRad: number;
}

/** The cone of sight through an ellipse: its axis away from the camera, and the directions across it in which it is widest and narrowest. */
export interface SightCone {
  readonly axis: Vector3;
  readonly wide: Vector3;
  readonly narrow: Vector3;
  /** Tangents of the angles between the axis and the cone there. */
  readonly wideTan: number;
  readonly narrowTan: number;
}

/** @returns null when the ellipse is none that lies before the camera. */
export function sightCone(ellipse: Ellipse, lens: Lens): SightCone | null {
  const cone = coneOf(ellipse, lens);
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(
    new Matrix([
      [cone[0], cone[1], cone[2]],
      [cone[3], cone[4], cone[5]],
      [cone[6], cone[7], cone[8]],
    ]),
    { assumeSymmetric: true },
  );
  // Ascending: one negative along the axis of the cone, two positive across it.
  const order = [0, 1, 2].toSorted((one, other) => (realEigenvalues[one] ?? 0) - (realEigenvalues[other] ?? 0));
  const [negative, middle, greatest] = order.map((index) => ({
    value: realEigenvalues[index] ?? 0,
    vector: toVector(eigenvectorMatrix.getColumn(index)),
  }));
  if (!negative || !middle || !greatest || !(negative.value < 0 && middle.value > 0)) return null;
  return {
    axis: upright(negative.vector),
    wide: middle.vector,
    narrow: greatest.vector,
    wideTan: Math.sqrt(-negative.value / middle.value),
    narrowTan: Math.sqrt(-negative.value / greatest.value),
  };
}

/** Sine of the angle between the axis of a cone and the normals of the two planes that cut it in a circle. */
export function leanSine({ wideTan, narrowTan }: Pick<SightCone, 'wideTan' | 'narrowTan'>): number {
  return Math.sqrt(Math.max(0, 1 - (narrowTan / wideTan) ** 2) / (1 + narrowTan ** 2));
}

/**
 * The two circles of a known radius whose picture is an ellipse. Their planes lie mirrored about the axis of the cone of
 * sight; a picture alone can't tell which is real. From the eigenvectors of the cone: Forsyth, Mundy, Zisserman et al. 1991,
 * IEEE PAMI 13:971; Kanatani & Liu 1993, CVGIP Image Understanding 58:286.
 *
 * @returns null when the ellipse is no picture of a circle in front of the camera.
 */
export function circlePoses(ellipse: Ellipse, lens: Lens, radiusMm: number): readonly [CirclePose, CirclePose] | null {
  const cone = sightCone(ellipse, lens);
  if (!cone) return null;
  const { axis, narrow: lean, wideTan, narrowTan } = cone;
  const across = leanSine(cone);
  const along = Math.sqrt(1 - across * across);

  const poseOf = (sign: number): CirclePose => {
    const normal = combine(axis, along, lean, sign * across);
    // The centre is the pole of the plane's horizon: M^-1 n, which in the cone's own axes only needs a division.
    const pole = combine(axis, -along, lean, sign * across * narrowTan ** 2);
    const level = (across * narrowTan) ** 2 - along ** 2;
    const factor = radiusMm / (wideTan * Math.sqrt(-level));
    const centre = combine(pole, -factor, pole, 0);
    return { centre, normal, nearEdgeRad: nearEdgeRad(centre, normal) };
  };
  return [poseOf(1), poseOf(-1)];
}

/** K' Q K for rays (x, y, 1) of the camera, brought to a size of about 1. */
function coneOf(ellipse: Ellipse, { focalPx, centre }: Lens): Matrix3 {
  const toRays = (px: number): number => px / focalPx;
  return matrixOf({
    centre: { xPx: toRays(ellipse.centre.xPx - centre.xPx), yPx: toRays(ellipse.centre.yPx - centre.yPx) },
    semiMajorPx: toRays(ellipse.semiMajorPx),
    semiMinorPx: toRays(ellipse.semiMinorPx),
    angleRad: ellipse.angleRad,
  });
}

/** Where the rim comes nearest: along the plane, against the line of sight. */
function nearEdgeRad(centre: Vector3, normal: Vector3): number {
  const towards = combine(normal, dot(normal, centre), centre, -1);
  // A step of the plane point X by dX moves its picture X / Z by (dX - x dZ) / Z.
  const x = towards[0] - (centre[0] / centre[2]) * towards[2];
  const y = towards[1] - (centre[1] / centre[2]) * towards[2];
  return Math.atan2(y, x);
}

/** Angle between the optical axis and the normal of the plane, degrees. */
export function tiltOf({ normal }: Pick<CirclePose, 'normal'>): number {
  return (Math.atan2(norm(cross(normal, [0, 0, 1])), normal[2]) * 180) / Math.PI;
}

function toVector([x = 0, y = 0, z = 0]: readonly number[]): Vector3 {
  return [x, y, z];
}

function upright(v: Vector3): Vector3 {
  return v[2] < 0 ? [-v[0], -v[1], -v[2]] : v;
}

function combine(a: Vector3, p: number, b: Vector3, q: number): Vector3 {
  return [p * a[0] + q * b[0], p * a[1] + q * b[1], p * a[2] + q * b[2]];
}
