import type { Calibration } from './calibrate.ts';
import { unshifted } from './lens/radialShift.ts';
import type { ImagePoint, PlanePoint } from './points.ts';
import { planePointOf } from './view.ts';

/** The point of the object's plane seen at a pixel; null beyond the horizon. */
export function toPlane({ view }: Pick<Calibration, 'view'>, at: ImagePoint): PlanePoint | null {
  return planePointOf(view.imageToPlane, view.radialShift ? unshifted(at, view.radialShift) : at);
}

/** Whether a point lies more than the object's longest side away from it, where errors of the corners grow quickly. */
export function isFarFromScale({ outline, reachMm }: Pick<Calibration, 'outline' | 'reachMm'>, { xMm, yMm }: PlanePoint): boolean {
  const xs = outline.map((point) => point.xMm);
  const ys = outline.map((point) => point.yMm);
  const beyond = (value: number, all: readonly number[]): number => Math.max(Math.min(...all) - value, value - Math.max(...all), 0);
  return Math.hypot(beyond(xMm, xs), beyond(yMm, ys)) > reachMm;
}
