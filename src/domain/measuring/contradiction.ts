import type { Calibration } from './calibrate.ts';
import type { ScaleMarks } from './calibration.ts';
import { pointOn } from './ellipse.ts';
import type { ImagePoint } from './points.ts';
import { COVERAGE_FACTOR } from './quantity.ts';
import { differenceVariance, type Extent, type LengthByScale, lengthByScale } from './twoScales.ts';

/** How long one scale object of a picture is by its own marks and by those of another. */
export interface Comparison {
  /** The longest extent of the second object by its own marks, and by the first object's scale. */
  readonly itselfMm: number;
  readonly byOtherMm: number;
  /** Of their difference, k = 2. */
  readonly expandedUncertaintyMm: number;
}

/** A scale object with what it tells. */
export interface ScaledObject {
  readonly marks: ScaleMarks;
  readonly calibration: Calibration;
}

/**
 * Whether two objects on one table contradict each other by more than their uncertainties: the extent of each is measured by
 * both scales, at the height of its own face, the second object's first. What is told is how long the second object is.
 *
 * @returns null while they agree, or where one of them cannot be seen by the other's scale.
 */
export function contradictionOf(one: ScaledObject, other: ScaledObject): Comparison | null {
  const found = compared(one, other);
  if (found !== null) return found;
  const mirrored = compared(other, one);
  if (mirrored === null) return null;
  // Told the same way round: what the first object's scale makes of the second.
  const factor = mirrored.itselfMm / mirrored.byOtherMm;
  const itselfMm = ownLength(other)?.valueMm ?? Number.NaN;
  return { itselfMm, byOtherMm: itselfMm * factor, expandedUncertaintyMm: (mirrored.expandedUncertaintyMm * itselfMm) / mirrored.itselfMm };
}

/** @returns null while they agree. */
function compared(one: ScaledObject, other: ScaledObject): Comparison | null {
  const comparison = comparisonOf(one, other);
  return comparison === null || agrees(comparison) ? null : comparison;
}

/** Whether both figures are the same within their uncertainties. */
function agrees({ itselfMm, byOtherMm, expandedUncertaintyMm }: Comparison): boolean {
  return Math.abs(byOtherMm - itselfMm) <= expandedUncertaintyMm;
}

/**
 * The second object's extent by its own marks and by the first one's scale, whether they agree or not.
 *
 * @returns null where it cannot be seen by the first one's scale.
 */
export function comparisonOf(one: ScaledObject, other: ScaledObject): Comparison | null {
  // Without a camera station heights cannot be allowed for; the difference they make stays small for flat objects.
  const corrected = one.calibration.station !== null;
  const aboveMm = corrected ? other.calibration.faceHeightMm - one.calibration.faceHeightMm : 0;
  const byOther = lengthByScale(one.calibration, extentOf(other.marks), aboveMm);
  const itself = ownLength(other);
  if (byOther === null || itself === null) return null;
  const heights = corrected ? 0 : heightDoubt(one.calibration, other.calibration);
  const expandedUncertaintyMm = COVERAGE_FACTOR * Math.sqrt(differenceVariance(byOther, itself) + (heights * itself.valueMm) ** 2);
  return { itselfMm: itself.valueMm, byOtherMm: byOther.valueMm, expandedUncertaintyMm };
}

/**
 * How long an object is by itself. A coin is as wide as it was minted whichever plane its outline leaves open, so that not its view is asked:
 * between two planes the outline is no circle, and would seem longer than it is by either.
 *
 * @returns null where one of the points lies beyond the plane's horizon.
 */
function ownLength({ marks, calibration }: ScaledObject): LengthByScale | null {
  if (marks.kind !== 'coin') return lengthByScale(calibration, extentOf(marks), 0);
  const { rim, rimPx, diameterMm, diameterStandardUncertaintyMm } = marks;
  const byRimMm = (2 * diameterMm * rimPx) / (rim.semiMajorPx + rim.semiMinorPx);
  const { standardUncertainty: share } = calibration.lens.shift;
  return {
    valueMm: diameterMm,
    ownVariance: byRimMm ** 2 + diameterStandardUncertaintyMm ** 2,
    focalMm: 0,
    lens: { perShareMm: 0, share, isCorrected: false },
  };
}

/** How much the difference of two faces' heights may change a length, relative, through the assumed camera. */
function heightDoubt(one: Calibration, other: Calibration): number {
  return Math.abs(other.faceHeightMm - one.faceHeightMm) / one.view.station.heightMm;
}

/** Diameters of a coin, all round: its mean radius is known far better than the longest of them, which every noise of the rim lengthens. */
const DIAMETERS = 8;

/** Two points of an object far apart, in the picture. */
function extentOf(marks: ScaleMarks): Extent {
  switch (marks.kind) {
    case 'two-points':
      return [marks.ends];
    case 'rectangle':
      return [[marks.corners[0], marks.corners[2]]];
    case 'coin':
      return Array.from({ length: DIAMETERS }, (_, index) => {
        const angle = (index * Math.PI) / DIAMETERS;
        return [pointOn(marks.rim, angle), pointOn(marks.rim, angle + Math.PI)];
      });
    case 'points':
      return [farthest(marks.points.map(({ at }) => at))];
    case 'rule-ticks':
      return [farthest(marks.ticks.map(({ from }) => from))];
  }
}

function farthest(points: readonly ImagePoint[]): readonly [ImagePoint, ImagePoint] {
  const [first = { xPx: 0, yPx: 0 }] = points;
  const awayFrom = (from: ImagePoint) =>
    points.reduce(
      (far, at) => (Math.hypot(at.xPx - from.xPx, at.yPx - from.yPx) > Math.hypot(far.xPx - from.xPx, far.yPx - from.yPx) ? at : far),
      from,
    );
  // From any point the farthest one is an end; from there the farthest is the other end or close to it.
  const end = awayFrom(first);
  return [end, awayFrom(end)];
}
