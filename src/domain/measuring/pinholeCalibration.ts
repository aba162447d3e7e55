import type { ScaleMarks } from './calibration.ts';
import type { CalibrationWarning } from './calibrationWarning.ts';
import type { PlanePoint } from './points.ts';
import type { RuleGeometry } from './ruleView.ts';
import type { CameraStation, View, ViewExcursion } from './view.ts';

/** The same as if the lens drew straight lines straight. */
export interface PinholeCalibration {
  readonly kind: ScaleMarks['kind'];
  readonly view: View;
  readonly excursions: readonly ViewExcursion[];
  /** On the object's plane at the middle of the picture; null when the middle lies beyond the plane's horizon. */
  readonly mmPerPxAtCenter: number | null;
  /** Angle between the optical axis and the plane's normal; null with two points, an undecided coin or without a focal length. */
  readonly tiltDeg: number | null;
  /** The tilt of a rule told apart along it and across it, where the lens is known; left out for any other object. */
  readonly ruleTilt?: Pick<RuleGeometry, 'along' | 'across'>;
  /**
   * Root mean square distance between the marked corners and those of the stated rectangle, fitted as a rigid body before
   * a camera with square pixels and the picture's focal length. Four corners determine a homography exactly and leave no
   * residual; this one has two degrees of freedom. Of a rule the same of its ticks about the fitted row, also without a focal length.
   * Null with two points, three sides, a coin, and of corners without a focal length.
   */
  readonly residualPx: number | null;
  /** Where the camera stood; null when the focal length is unknown, and without tilt for two points. */
  readonly station: CameraStation | null;
  /** Of the object's face above the table. */
  readonly faceHeightMm: number;
  /** Corners or ends of the object on its plane, and how far from it lengths are still well supported. */
  readonly outline: readonly PlanePoint[];
  readonly reachMm: number;
  readonly warnings: readonly CalibrationWarning[];
}
