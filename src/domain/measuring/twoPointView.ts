import { cross, dot, type Matrix3, norm, type Vector3 } from '../numerics/matrix3.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { TwoPointScale } from './calibration.ts';
import { focalStandardUncertaintyPx, type Lens, lensOf, type PictureFacts } from './camera.ts';
import { distance } from './corners.ts';
import type { ImagePoint } from './points.ts';
import type { View, ViewExcursion } from './view.ts';

export interface TwoPointGeometry {
  readonly view: View;
  readonly excursions: readonly ViewExcursion[];
}

/** Ends nearer than this to each other give no scale. */
const LEAST_DISTANCE_PX = 1;

/**
 * Standard uncertainty of the slope (tangent of the tilt) in each of two directions at right angles, for a phone held by hand over a
 * table without a level: tilts within 20 degrees in 95 of 100 pictures. Own assumption.
 */
const SLOPE_STANDARD_UNCERTAINTY = 0.145;

export interface TwoPointInputs {
  readonly ends: readonly [ImagePoint, ImagePoint];
  readonly distanceMm: number;
  readonly lens: Lens;
  /** The plane's depth is Z0 / (1 - slopeX x - slopeY y) for the ray (x, y, 1). */
  readonly slopeX: number;
  readonly slopeY: number;
}

/** The view through two marked points, the camera taken to look straight down, and how it moves with each input. */
export function viewOfTwoPoints(marks: TwoPointScale, picture: PictureFacts): Result<TwoPointGeometry> {
  const [first, second] = marks.ends;
  if (!(distance(first, second) >= LEAST_DISTANCE_PX)) return fail({ code: 'scale-points-coincide' });

  const lens = lensOf(picture);
  const inputs: TwoPointInputs = { ends: marks.ends, distanceMm: marks.distanceMm, lens, slopeX: 0, slopeY: 0 };
  const moved = (change: Partial<TwoPointInputs>): View => viewOfSlopedPlane({ ...inputs, ...change });
  const pair = (source: ViewExcursion['source'], change: (sign: number) => Partial<TwoPointInputs>): ViewExcursion => ({
    source,
    below: moved(change(-1)),
    above: moved(change(1)),
  });

  const px = marks.pointingPx;
  // Slopes along the scale and across it, so that turning the picture changes nothing.
  const alongX = (SLOPE_STANDARD_UNCERTAINTY * (second.xPx - first.xPx)) / distance(first, second);
  const alongY = (SLOPE_STANDARD_UNCERTAINTY * (second.yPx - first.yPx)) / distance(first, second);
  const excursions: ViewExcursion[] = [
    pair('calibration', (sign) => ({ ends: [{ ...first, xPx: first.xPx + sign * px }, second] })),
    pair('calibration', (sign) => ({ ends: [{ ...first, yPx: first.yPx + sign * px }, second] })),
    pair('calibration', (sign) => ({ ends: [first, { ...second, xPx: second.xPx + sign * px }] })),
    pair('calibration', (sign) => ({ ends: [first, { ...second, yPx: second.yPx + sign * px }] })),
    pair('tilt-unknown', (sign) => ({ slopeX: sign * alongX, slopeY: sign * alongY })),
    pair('tilt-unknown', (sign) => ({ slopeX: -sign * alongY, slopeY: sign * alongX })),
  ];
  const distanceUncertaintyMm = marks.distanceStandardUncertaintyMm;
  if (distanceUncertaintyMm > 0) {
    excursions.push(pair('scale-object', (sign) => ({ distanceMm: marks.distanceMm + sign * distanceUncertaintyMm })));
  }
  const focalUncertaintyPx = focalStandardUncertaintyPx(lens, picture);
  if (focalUncertaintyPx > 0) {
    excursions.push(pair('camera-distance', (sign) => ({ lens: { ...lens, focalPx: lens.focalPx + sign * focalUncertaintyPx } })));
  }
  return succeed({ view: viewOfSlopedPlane(inputs), excursions });
}

/** The view of a plane of known slope: its origin is the camera's foot; without tilt its axes are those of the picture. */
export function viewOfSlopedPlane({ ends, distanceMm, lens, slopeX, slopeY }: TwoPointInputs): View {
  const across: Vector3 = [1, 0, slopeX];
  const towards: Vector3 = [-slopeX, -slopeY, 1];
  const acrossLength = norm(across);
  const towardsLength = norm(towards);
  const right: Vector3 = [1 / acrossLength, 0, slopeX / acrossLength];
  const downUnscaled = cross(towards, right);
  const down: Vector3 = [downUnscaled[0] / towardsLength, downUnscaled[1] / towardsLength, downUnscaled[2] / towardsLength];

  const place = (at: ImagePoint): readonly [number, number] => {
    const ray: Vector3 = [(at.xPx - lens.centre.xPx) / lens.focalPx, (at.yPx - lens.centre.yPx) / lens.focalPx, 1];
    const factor = dot(towards, ray);
    return [dot(right, ray) / factor, dot(down, ray) / factor];
  };
  const [x1, y1] = place(ends[0]);
  const [x2, y2] = place(ends[1]);
  const depthMm = distanceMm / Math.hypot(x2 - x1, y2 - y1);
  return {
    imageToPlane: fromRays(right, down, towards, depthMm, lens),
    station: { foot: { xMm: 0, yMm: 0 }, heightMm: depthMm / towardsLength },
  };
}

/** Rows (depth x right, depth x down, towards) times K^-1. */
function fromRays(right: Vector3, down: Vector3, towards: Vector3, depthMm: number, { focalPx, centre }: Lens): Matrix3 {
  const row = (v: Vector3, factor: number): Vector3 => [
    (factor * v[0]) / focalPx,
    (factor * v[1]) / focalPx,
    factor * (v[2] - (v[0] * centre.xPx + v[1] * centre.yPx) / focalPx),
  ];
  return [...row(right, depthMm), ...row(down, depthMm), ...row(towards, 1)];
}
