import { cross, dot, type Matrix3, norm, type Vector3 } from '../numerics/matrix3.ts';
import type { Lens } from './camera.ts';
import type { View } from './view.ts';

/** A plane before the camera: its depth along the ray (x, y, 1) is `depthMm` / (1 - slopeX x - slopeY y). */
export interface SlopedPlane {
  readonly slopeX: number;
  readonly slopeY: number;
  /** Along the optical axis. */
  readonly depthMm: number;
}

/** The axes of a sloped plane as the camera sees them (x right, y down, z forward); `towards` is no unit vector, its z is 1. */
export interface PlaneAxes {
  readonly right: Vector3;
  readonly down: Vector3;
  readonly towards: Vector3;
}

export function axesOf({ slopeX, slopeY }: Pick<SlopedPlane, 'slopeX' | 'slopeY'>): PlaneAxes {
  const across: Vector3 = [1, 0, slopeX];
  const towards: Vector3 = [-slopeX, -slopeY, 1];
  const acrossLength = norm(across);
  const towardsLength = norm(towards);
  const right: Vector3 = [1 / acrossLength, 0, slopeX / acrossLength];
  const downUnscaled = cross(towards, right);
  return { right, down: [downUnscaled[0] / towardsLength, downUnscaled[1] / towardsLength, downUnscaled[2] / towardsLength], towards };
}

/** The view of a sloped plane: its origin is the camera's foot; without slope its axes are those of the picture. */
export function viewOfPlane(plane: SlopedPlane, lens: Lens): View {
  const axes = axesOf(plane);
  return {
    imageToPlane: fromRays(axes, plane.depthMm, lens),
    station: { foot: { xMm: 0, yMm: 0 }, heightMm: plane.depthMm / norm(axes.towards) },
  };
}

/** Rows (depth x right, depth x down, towards) times K^-1. */
function fromRays({ right, down, towards }: PlaneAxes, depthMm: number, { focalPx, centre }: Lens): Matrix3 {
  const row = (v: Vector3, factor: number): Vector3 => [
    (factor * v[0]) / focalPx,
    (factor * v[1]) / focalPx,
    factor * (v[2] - (v[0] * centre.xPx + v[1] * centre.yPx) / focalPx),
  ];
  return [...row(right, depthMm), ...row(down, depthMm), ...row(towards, 1)];
}

/** The plane through a point of the camera's frame at right angles to a direction that points away from the camera. */
export function planeThrough(point: Vector3, normal: Vector3): SlopedPlane {
  return { slopeX: -normal[0] / normal[2], slopeY: -normal[1] / normal[2], depthMm: dot(normal, point) / normal[2] };
}
