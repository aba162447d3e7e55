import { dot, type Vector3 } from '../numerics/matrix3.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { TwoPointScale } from './calibration.ts';
import { focalStandardUncertaintyPx, type Lens, lensOf, type PictureFacts } from './camera.ts';
import { distance } from './corners.ts';
import type { ImagePoint } from './points.ts';
import { axesOf, viewOfPlane } from './slopedPlane.ts';
import { SLOPE_STANDARD_UNCERTAINTY } from './slopePrior.ts';
import type { View, ViewExcursion } from './view.ts';

export interface TwoPointGeometry {
  readonly view: View;
  readonly excursions: readonly ViewExcursion[];
}

/** Ends nearer than this to each other give no scale. */
const LEAST_DISTANCE_PX = 1;

export interface TwoPointInputs {
  readonly ends: readonly [ImagePoint, ImagePoint];
  readonly distanceMm: number;
  readonly lens: Lens;
  /** The plane's depth is Z0 / (1 - slopeX x - slopeY y) for the ray (x, y, 1). */
  readonly slopeX: number;
  readonly slopeY: number;
}

/** The view through two marked points, the camera taken to look straight down, and how it moves with each input. */
export function viewOfTwoPoints(marks: Omit<TwoPointScale, 'kind'>, picture: PictureFacts): Result<TwoPointGeometry> {
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

/** The view of a plane of known slope, as far away as the distance of the ends tells. */
export function viewOfSlopedPlane({ ends, distanceMm, lens, slopeX, slopeY }: TwoPointInputs): View {
  const { right, down, towards } = axesOf({ slopeX, slopeY });
  const place = (at: ImagePoint): readonly [number, number] => {
    const ray: Vector3 = [(at.xPx - lens.centre.xPx) / lens.focalPx, (at.yPx - lens.centre.yPx) / lens.focalPx, 1];
    const factor = dot(towards, ray);
    return [dot(right, ray) / factor, dot(down, ray) / factor];
  };
  const [x1, y1] = place(ends[0]);
  const [x2, y2] = place(ends[1]);
  return viewOfPlane({ slopeX, slopeY, depthMm: distanceMm / Math.hypot(x2 - x1, y2 - y1) }, lens);
}
