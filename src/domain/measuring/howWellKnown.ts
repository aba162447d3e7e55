import { contribution, curvature, meanSquareDeviation } from '../numerics/propagation.ts';
import type { Calibration } from './calibrate.ts';
import type { PictureFacts } from './camera.ts';
import { type Estimate, estimateFrom } from './quantity.ts';
import { localScaleMmPerPx, planePointOf, type View, type ViewExcursion } from './view.ts';

/** What a calibration tells of the picture, with how well each is known. */
export interface PictureKnown {
  /** On the object's plane at the middle of the picture; null when the middle lies beyond the plane's horizon. */
  readonly mmPerPxAtCenter: Estimate | null;
  /** Degrees, >= 0; null where the calibration tells no tilt, or one that its own marks contradict. */
  readonly tiltDeg: Estimate | null;
  /** Of the camera above the object's face; null where it is not known, likewise. */
  readonly cameraHeightMm: Estimate | null;
}

/** The scale, the tilt and the height of the camera, each with its uncertainty from all inputs of the calibration. */
export function howWellKnown(calibration: Calibration, { widthPx, heightPx }: Pick<PictureFacts, 'widthPx' | 'heightPx'>): PictureKnown {
  const { view, excursions, mmPerPxAtCenter, tiltDeg, station } = calibration;
  const centre = { xPx: widthPx / 2, yPx: heightPx / 2 };
  const estimate = (value: number, model: (through: View) => number | null): Estimate =>
    estimateFrom(value, Math.sqrt(varianceThrough(excursions, value, (through) => model(through) ?? value)));
  const axis = axisOf(view, centre);
  // A picture that was cut has another middle: what follows from its middle is then wrong by any amount.
  const isPoseSound = calibration.warnings.every(({ code }) => code !== 'shape-disagrees');
  return {
    mmPerPxAtCenter:
      mmPerPxAtCenter === null ? null : estimate(mmPerPxAtCenter, (through) => localScaleMmPerPx(through.imageToPlane, centre)),
    tiltDeg:
      tiltDeg === null || axis === null || !isPoseSound
        ? null
        : estimateFrom(
            tiltDeg,
            axisUncertaintyDeg(excursions, axis, (through) => axisOf(through, centre)),
          ),
    cameraHeightMm: station === null || !isPoseSound ? null : estimate(station.heightMm, (through) => through.station.heightMm),
  };
}

/**
 * Variance of what a model makes of a view, in the model's unit squared. The inputs are independent; an unknown tilt counts to the
 * second order, since its first vanishes where the camera looks straight down.
 */
export function varianceThrough(excursions: readonly ViewExcursion[], value: number, model: (through: View) => number): number {
  const tilts = excursions.filter(({ source }) => source === 'tilt-unknown');
  const others = excursions.filter(({ source }) => source !== 'tilt-unknown');
  return (
    others.reduce((sum, excursion) => sum + contribution(model, excursion) ** 2, 0) +
    meanSquareDeviation(
      tilts.map((excursion) => contribution(model, excursion)),
      tilts.map((excursion) => curvature(model, value, excursion)),
    )
  );
}

/** Slopes of the line of sight through a pixel against the plane's normal, along the plane's axes. */
interface Axis {
  readonly x: number;
  readonly y: number;
}

function axisOf({ imageToPlane, station: { foot, heightMm } }: View, centre: { readonly xPx: number; readonly yPx: number }): Axis | null {
  const at = planePointOf(imageToPlane, centre);
  return at && { x: (at.xMm - foot.xMm) / heightMm, y: (at.yMm - foot.yMm) / heightMm };
}

/**
 * Of the direction of the optical axis, in the direction in which it is known least, degrees: near straight down a tilt, being never
 * negative, has no slope to propagate by.
 */
function axisUncertaintyDeg(excursions: readonly ViewExcursion[], { x, y }: Axis, axisIn: (view: View) => Axis | null): number {
  let [xx, xy, yy] = [0, 0, 0];
  // An angle is smaller than the step of its slope: by 1 + slope^2 along the tilt, and by its root across.
  const along = 1 / (1 + x * x + y * y);
  const across = Math.sqrt(along);
  const tilt = Math.hypot(x, y);
  const [ux, uy] = tilt === 0 ? [1, 0] : [x / tilt, y / tilt];
  for (const { below, above } of excursions) {
    const [low, high] = [axisIn(below), axisIn(above)];
    if (low === null || high === null) continue;
    const [dx, dy] = [(high.x - low.x) / 2, (high.y - low.y) / 2];
    const a = along * (dx * ux + dy * uy);
    const b = across * (dy * ux - dx * uy);
    xx += a * a;
    xy += a * b;
    yy += b * b;
  }
  const largest = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  return (Math.sqrt(largest) * 180) / Math.PI;
}
