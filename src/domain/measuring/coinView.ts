import { fail, type Result, succeed } from '../result.ts';
import type { CoinScale } from './calibration.ts';
import { focalStandardUncertaintyPx, type Lens, lensOf, type PictureFacts } from './camera.ts';
import { type CirclePose, circlePoses, tiltOf } from './circlePose.ts';
import { aboutLevel, axesOfSpread, betweenBoth, type SlopeBelief, slopesOfRim, spreadAbout } from './coinSlopes.ts';
import { type Ellipse, ellipseThrough } from './ellipse.ts';
import { planeThrough, type SlopedPlane, viewOfPlane } from './slopedPlane.ts';
import { SECOND_ORDER_SLOPE } from './slopePrior.ts';
import type { View, ViewExcursion } from './view.ts';

export interface CoinGeometry {
  readonly view: View;
  readonly excursions: readonly ViewExcursion[];
  /** Null while undecided, and without a focal length. */
  readonly tiltDeg: number | null;
  /** Both possible planes; null without a focal length. */
  readonly solutions: readonly [CoinSolution, CoinSolution] | null;
}

/** What to show a keeper who is asked which of two planes was real. */
export interface CoinSolution {
  readonly tiltDeg: number;
  readonly nearEdgeRad: number;
}

/**
 * The view through the rim of a coin, in the frame of the plane of its upper rim: origin straight below the camera.
 *
 * With a focal length the plane follows from the ellipse, up to its mirror image about the line of sight; what its noise and what is
 * known of any picture leave open stands in the uncertainty. While the side is undecided the estimate stands between what is believed of
 * the two, and half of their difference in the uncertainty. Without a focal length the mean radius gives one scale for all, as if the camera had looked
 * straight down, and the tilts that the outline leaves possible stand in the uncertainty.
 */
export function viewOfCoin(marks: CoinScale, picture: PictureFacts): Result<CoinGeometry> {
  const lens = lensOf(picture);
  if (!(marks.rim.semiMinorPx > 0 && marks.rim.semiMajorPx >= marks.rim.semiMinorPx)) return fail({ code: 'rim-not-elliptic' });
  const poses = circlePoses(marks.rim, lens, marks.diameterMm / 2);
  // A plane seen edge-on or from below is none to measure on.
  if (!poses?.every(({ normal }) => normal[2] > 0)) return fail({ code: 'rim-not-elliptic' });
  const chosen = lens.known && marks.nearEdgeRad !== null ? nearest(poses, marks.nearEdgeRad) : null;
  const slopesThrough = (through: Lens): SlopeBelief | null => {
    if (chosen !== null) {
      // That someone could tell which edge was nearer speaks for a tilt: the outline is taken at its word, the prior only widens.
      const pose = circlePoses(marks.rim, through, marks.diameterMm / 2)?.[chosen];
      const belief = slopesOfRim(marks, through, chosen);
      return pose && belief ? spreadAbout(planeThrough(pose.centre, pose.normal), belief) : null;
    }
    const [one, other] = [slopesOfRim(marks, through, 0), slopesOfRim(marks, through, 1)];
    if (!one || !other) return null;
    return through.known ? betweenBoth([one, other]) : aboutLevel([one, other]);
  };
  const slopes = slopesThrough(lens);
  const see = (at: Slopes, by: { readonly radiusPx?: number; readonly diameterMm?: number; readonly lens?: Lens } = {}): View | null =>
    viewAtSlope(at, marks.rim, by.radiusPx ?? 0, by.diameterMm ?? marks.diameterMm, by.lens ?? lens);
  const view = slopes && see(slopes);
  if (!view) return fail({ code: 'rim-not-elliptic' });
  // An input at its limit (a rim that would be no circle's) says nothing; that side then stays in place.
  const pair = (source: ViewExcursion['source'], change: (sign: number) => View | null): ViewExcursion => ({
    source,
    below: change(-1) ?? view,
    above: change(1) ?? view,
  });

  const axes = axesOfSpread(slopes);
  const tiltSource = axes.some(({ deviation }) => deviation > SECOND_ORDER_SLOPE) ? 'tilt-unknown' : 'calibration';
  // Where the middle of a rim lies changes no scale.
  const excursions = [
    pair('calibration', (sign) => see(slopes, { radiusPx: sign * marks.rimPx })),
    ...axes.map(({ x, y, deviation }) =>
      pair(tiltSource, (sign) => see({ slopeX: slopes.slopeX + sign * deviation * x, slopeY: slopes.slopeY + sign * deviation * y })),
    ),
  ];
  const { diameterStandardUncertaintyMm: diameterUncertaintyMm } = marks;
  if (diameterUncertaintyMm > 0) {
    excursions.push(pair('scale-object', (sign) => see(slopes, { diameterMm: marks.diameterMm + sign * diameterUncertaintyMm })));
  }
  const focalPx = focalStandardUncertaintyPx(lens, picture);
  if (focalPx > 0) {
    const refocused = (sign: number): View | null => {
      const other = { ...lens, focalPx: lens.focalPx + sign * focalPx };
      const slopesThen = slopesThrough(other);
      return slopesThen && see(slopesThen, { lens: other });
    };
    excursions.push(pair('camera-distance', refocused));
  }
  return succeed({
    view,
    excursions,
    tiltDeg: chosen === null ? null : tiltOf(poses[chosen]),
    solutions: lens.known ? [solutionOf(poses[0]), solutionOf(poses[1])] : null,
  });
}

type Slopes = Pick<SlopedPlane, 'slopeX' | 'slopeY'>;

function solutionOf(pose: CirclePose): CoinSolution {
  return { tiltDeg: tiltOf(pose), nearEdgeRad: pose.nearEdgeRad };
}

function nearest([one, other]: readonly [CirclePose, CirclePose], nearEdgeRad: number): 0 | 1 {
  return Math.cos(one.nearEdgeRad - nearEdgeRad) >= Math.cos(other.nearEdgeRad - nearEdgeRad) ? 0 : 1;
}

/** The plane of these slopes, as far away as makes the mean radius of the rim that of the coin. */
function viewAtSlope(slopes: Slopes, rim: Ellipse, radiusPx: number, diameterMm: number, lens: Lens): View | null {
  const seen = { ...rim, semiMajorPx: rim.semiMajorPx + radiusPx, semiMinorPx: rim.semiMinorPx + radiusPx };
  const onPlane = ellipseThrough(viewOfPlane({ ...slopes, depthMm: 1 }, lens).imageToPlane, seen);
  if (!onPlane) return null;
  return viewOfPlane({ ...slopes, depthMm: diameterMm / (onPlane.semiMajorPx + onPlane.semiMinorPx) }, lens);
}
