import { assertNever, type Result, succeed } from '../result.ts';
import { calibrateOnCoin } from './calibrateCoin.ts';
import { calibrateOnPoints } from './calibratePoints.ts';
import { calibrateOnRule } from './calibrateRule.ts';
import { calibrateOnThreeSides } from './calibrateThreeSides.ts';
import type { RectangleScale, ScaleMarks, TwoPointScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { commonWarnings, shapeWarnings, tiltWarnings } from './commonWarnings.ts';
import { distance } from './corners.ts';
import { distortionExcursion, radialShiftOf, unshifted, unshiftedMarks } from './distortion.ts';
import { faceHeightExcursions } from './faceHeight.ts';
import { type LensFound, lensFound } from './lens/lensFound.ts';
import type { ImagePoint, PlanePoint } from './points.ts';
import { rectangleOutline, viewOfRectangle } from './rectangleView.ts';
import { rigidResidualPx } from './rigidResidual.ts';
import type { RuleGeometry } from './ruleView.ts';
import { type SideNumber, threeSidesOf } from './threeSides.ts';
import { viewOfTwoPoints } from './twoPointView.ts';
import { type CameraStation, localScaleMmPerPx, planePointOf, type View, type ViewExcursion } from './view.ts';

/** What the keeper should know about a calibration. Facts only. */
export type CalibrationWarning =
  /** The camera looked more than 30 degrees away from straight down. */
  | { readonly code: 'strong-tilt'; readonly tiltDeg: number }
  /** The longest side of the object covers less than a tenth of the picture's width. */
  | { readonly code: 'scale-object-small'; readonly shareOfWidth: number }
  /** The expanded uncertainty of the object's size is half a per cent or more. */
  | { readonly code: 'scale-object-coarse'; readonly relativeStandardUncertainty: number }
  /** Two points say nothing about tilt, a coin little without a focal length, nor do a few short ticks or three sides of some cards. */
  | { readonly code: 'tilt-unknown'; readonly by: Extract<ScaleMarks['kind'], 'two-points' | 'coin' | 'rule-ticks' | 'rectangle'> }
  /** Two corners of a card follow from three sides and the focal length: a wrong one no longer shows in the shape. */
  | { readonly code: 'side-hidden'; readonly side: SideNumber }
  /** A coin's outline is that of two planes; which was real is not decided. */
  | { readonly code: 'tilt-direction-open'; readonly tiltsDeg: readonly [number, number] }
  /** The points scatter more about their plane than they should: a bent card, a distorting lens, a wrong point. */
  | { readonly code: 'points-scatter'; readonly scatterPx: number }
  /** The ticks lie farther off an even row than finding them and a sound rule explain: bent, worn, or another graduation. */
  | { readonly code: 'ticks-scatter'; readonly scatterPx: number; readonly scatterMm: number; readonly expectedPx: number }
  /** The printed card is seen as in a mirror: lengths are right, left and right of the animal are exchanged. */
  | { readonly code: 'picture-mirrored' }
  /** The picture does not tell its 35 mm equivalent focal length: no tilt, no residual, no height correction. */
  | { readonly code: 'focal-length-unknown' }
  /** What was marked does not fit its own shape seen through this lens: a wrong corner, another object, or a cropped picture. */
  | {
      readonly code: 'shape-disagrees';
      readonly of: Extract<ScaleMarks['kind'], 'rectangle' | 'points'>;
      readonly aspectErrorPercent: number;
      readonly angleErrorDeg: number;
    };

/** Everything the marks on a scale object tell about a picture. Plain data, in the frame of the object's face. */
export interface Calibration extends PinholeCalibration {
  /** How the lens bends the picture; where it is corrected, all of the above holds for the corrected one. */
  readonly lens: LensFound;
}

/** The same as if the lens drew straight lines straight. */
export interface PinholeCalibration {
  readonly kind: ScaleMarks['kind'];
  readonly view: View;
  readonly excursions: readonly ViewExcursion[];
  /** On the object's plane at the middle of the picture; null when the middle lies beyond the plane's horizon. */
  readonly mmPerPxAtCenter: number | null;
  /** Angle between the optical axis and the plane's normal; null with two points or without a focal length. */
  readonly tiltDeg: number | null;
  /** The tilt of a rule told apart along it and across it, where the lens is known; left out for any other object. */
  readonly ruleTilt?: Pick<RuleGeometry, 'along' | 'across'>;
  /**
   * Root mean square distance between the marked corners and those of the stated rectangle, fitted as a rigid body before
   * a camera with square pixels and the picture's focal length. Four corners determine a homography exactly and leave no
   * residual; this one has two degrees of freedom. Null with two points, three sides or without a focal length.
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

/**
 * What the marks on a scale object tell about a picture.
 *
 * @param marks in the upright frame of the picture.
 * @returns a failure when the marks coincide, lie on a line, cross, run anticlockwise on the screen, or are no circle's picture.
 */
export function calibrate(marks: ScaleMarks, picture: PictureFacts): Result<Calibration> {
  const through = (seen: ScaleMarks): Result<PinholeCalibration> => calibrateThroughPinhole(seen, picture);
  const lens = lensFound(marks, picture);
  const radialShift = radialShiftOf(picture, lens.shift.cornerShare);
  const pinhole = through(lens.isCorrected ? unshiftedMarks(marks, radialShift) : marks);
  if (!pinhole.ok) return pinhole;
  const before = (view: View): View => (lens.isCorrected ? { ...view, radialShift } : view);
  const view = before(pinhole.value.view);
  const excursions: ViewExcursion[] = pinhole.value.excursions.map(({ source, below, above }) => ({
    source,
    below: before(below),
    above: before(above),
  }));
  excursions.push(...faceHeightExcursions(marks, view));
  excursions.push(distortionExcursion(marks, picture, view, through, lens.shift));
  return succeed({ ...pinhole.value, view, excursions, lens });
}

/** As if the lens drew straight lines straight. */
function calibrateThroughPinhole(marks: ScaleMarks, picture: PictureFacts): Result<PinholeCalibration> {
  switch (marks.kind) {
    case 'rectangle':
      return calibrateOnRectangle(marks, picture);
    case 'two-points':
      return calibrateOnTwoPoints(marks, picture);
    case 'coin':
      return calibrateOnCoin(marks, picture);
    case 'points':
      return calibrateOnPoints(marks, picture);
    case 'rule-ticks':
      return calibrateOnRule(marks, picture);
    default:
      return assertNever(marks);
  }
}

function calibrateOnRectangle(marks: RectangleScale, picture: PictureFacts): Result<PinholeCalibration> {
  const lens = lensOf(picture);
  const three = marks.sidePoints && lens.known ? threeSidesOf(marks.sidePoints, marks) : null;
  if (three) return calibrateOnThreeSides(three, marks, picture);
  const geometry = viewOfRectangle(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions } = geometry.value;
  const { corners } = marks;
  const longestPx = Math.max(...corners.map((corner, index) => distance(corner, corners[(index + 1) % 4] ?? corner)));
  const relative = Math.max(marks.widthStandardUncertaintyMm / marks.widthMm, marks.heightStandardUncertaintyMm / marks.heightMm);
  const warnings = commonWarnings(picture, longestPx, relative, lens.known);
  if (lens.known) {
    warnings.push(...tiltWarnings(view.pose.tiltDeg), ...shapeWarnings('rectangle', geometry.value));
  }
  return succeed({
    kind: 'rectangle',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lens.centre),
    tiltDeg: lens.known ? view.pose.tiltDeg : null,
    residualPx: lens.known ? rigidResidualPx(view.pose.frame, lens, rectangleOutline(marks), corners) : null,
    station: lens.known ? view.station : null,
    faceHeightMm: marks.thicknessMm,
    outline: rectangleOutline(marks),
    reachMm: Math.max(marks.widthMm, marks.heightMm),
    warnings,
  });
}

function calibrateOnTwoPoints(marks: TwoPointScale, picture: PictureFacts): Result<PinholeCalibration> {
  const geometry = viewOfTwoPoints(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions } = geometry.value;
  const lens = lensOf(picture);
  const relative = marks.distanceStandardUncertaintyMm / marks.distanceMm;
  return succeed({
    kind: 'two-points',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lens.centre),
    tiltDeg: null,
    residualPx: null,
    station: lens.known ? view.station : null,
    faceHeightMm: marks.heightMm,
    outline: marks.ends.flatMap((end) => planePointOf(view.imageToPlane, end) ?? []),
    reachMm: marks.distanceMm,
    warnings: [{ code: 'tilt-unknown', by: 'two-points' }, ...commonWarnings(picture, distance(...marks.ends), relative, lens.known)],
  });
}

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
