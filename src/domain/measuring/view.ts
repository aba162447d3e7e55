import { adjugate, type Matrix3, multiply, scale, transform } from '../numerics/matrix3.ts';
import type { Excursion } from '../numerics/propagation.ts';
import { type RadialShift, unshifted } from './lens/radialShift.ts';
import type { ImagePoint, PlanePoint } from './points.ts';
import type { BudgetSource } from './quantity.ts';

/** Where the camera stood over the plane of the scale object's face. */
export interface CameraStation {
  /** The point of the plane straight below the camera, mm. */
  readonly foot: PlanePoint;
  /** Distance of the projection centre from the plane, mm, > 0. */
  readonly heightMm: number;
}

/** How the picture and the plane of the scale object's face belong together, under one set of inputs. */
export interface View {
  /** Takes (xPx, yPx, 1) to (xMm, yMm, 1) times a factor that is positive on the visible side of the horizon. */
  readonly imageToPlane: Matrix3;
  readonly station: CameraStation;
  /** What a distorting lens did to the picture, undone before `imageToPlane`; left out for a lens taken to be free of it. */
  readonly radialShift?: RadialShift;
}

/** One input of a calibration, moved down and up by its standard uncertainty. */
export interface ViewExcursion<Seen extends View = View> extends Excursion<Seen> {
  readonly source: Exclude<BudgetSource, 'pointing' | 'height'>;
}

/** A point in space: the plane's x and y, and z above the plane, towards the camera. All in mm. */
export interface SpacePoint {
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
}

/** The inverse of a map from plane to picture, with its sign chosen so that `visible` has a positive factor. */
export function invertHomography(planeToImage: Matrix3, visible: ImagePoint): Matrix3 {
  const inverse = adjugate(planeToImage);
  const factor = transform(inverse, visible.xPx, visible.yPx, 1)[2];
  return factor < 0 ? scale(inverse, -1) : inverse;
}

/** The view of an object whose sides are longer by these factors than `view` takes them to be. */
export function stretchPlane(imageToPlane: Matrix3, xFactor: number, yFactor: number): Matrix3 {
  return multiply([xFactor, 0, 0, 0, yFactor, 0, 0, 0, 1], imageToPlane);
}

/** The point of the plane seen at a pixel, or null when the pixel lies on or beyond the plane's horizon. */
export function planePointOf(imageToPlane: Matrix3, at: ImagePoint): PlanePoint | null {
  const [x, y, factor] = transform(imageToPlane, at.xPx, at.yPx, 1);
  if (!(factor > 0)) return null;
  const point = { xMm: x / factor, yMm: y / factor };
  return Number.isFinite(point.xMm) && Number.isFinite(point.yMm) ? point : null;
}

/**
 * The point seen at a pixel that lies `zMm` above the plane. The line of sight through the plane's point meets that height
 * exactly at foot + (point - foot) (height - z) / height, whatever the tilt.
 *
 * @returns null beyond the horizon, and when the height reaches up to the camera.
 */
export function spacePointOf(view: View, at: ImagePoint, zMm: number): SpacePoint | null {
  const { foot, heightMm } = view.station;
  const point = planePointOf(view.imageToPlane, view.radialShift ? unshifted(at, view.radialShift) : at);
  if (!point || !(zMm < heightMm)) return null;
  const factor = (heightMm - zMm) / heightMm;
  return { xMm: foot.xMm + (point.xMm - foot.xMm) * factor, yMm: foot.yMm + (point.yMm - foot.yMm) * factor, zMm };
}

/** Millimeters per pixel at a place of the picture: the square root of the local ratio of areas; null beyond the horizon. */
export function localScaleMmPerPx(imageToPlane: Matrix3, at: ImagePoint): number | null {
  const [x, y, factor] = transform(imageToPlane, at.xPx, at.yPx, 1);
  if (!(factor > 0)) return null;
  const m = imageToPlane;
  const dxByX = (m[0] - (x / factor) * m[6]) / factor;
  const dxByY = (m[1] - (x / factor) * m[7]) / factor;
  const dyByX = (m[3] - (y / factor) * m[6]) / factor;
  const dyByY = (m[4] - (y / factor) * m[7]) / factor;
  return Math.sqrt(Math.abs(dxByX * dyByY - dxByY * dyByX));
}
