import { fail, type Result, succeed } from '../result.ts';
import type { CoinScale } from './calibration.ts';
import { focalStandardUncertaintyPx, type Lens, lensOf, type PictureFacts } from './camera.ts';
import { type CirclePose, circlePoses, tiltOf } from './circlePose.ts';
import { elongationOf, elongationUncertaintyPx, unbiasedRim, withElongation } from './coinRim.ts';
import { type Ellipse, pointOn } from './ellipse.ts';
import { planeThrough, type SlopedPlane, viewOfPlane } from './slopedPlane.ts';
import { viewOfTwoPoints } from './twoPointView.ts';
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

/** Everything the plane of a coin follows from. */
interface Inputs {
  readonly rim: Ellipse;
  readonly diameterMm: number;
  readonly lens: Lens;
}

/**
 * The view through the rim of a coin, in the frame of the plane of its upper rim: origin straight below the camera.
 *
 * With a focal length the plane follows from the ellipse, up to its mirror image about the line of sight. While that is
 * undecided the estimate stands between the two, and half of their difference in the uncertainty. Without a focal length
 * the longest diameter, freed of what noise adds to it, gives one scale for all, as if the camera had looked straight down,
 * and the tilt that the outline suggests stands in the uncertainty.
 */
export function viewOfCoin(marks: CoinScale, picture: PictureFacts): Result<CoinGeometry> {
  const lens = lensOf(picture);
  if (!(marks.rim.semiMinorPx > 0 && marks.rim.semiMajorPx >= marks.rim.semiMinorPx)) return fail({ code: 'rim-not-elliptic' });
  if (!lens.known) return flatView(marks, picture);
  const inputs: Inputs = { rim: marks.rim, diameterMm: marks.diameterMm, lens };
  const poses = posesOf(inputs);
  if (!poses) return fail({ code: 'rim-not-elliptic' });

  const see = (of: Inputs): View | null => {
    const plane = planeOf(of, marks.nearEdgeRad);
    return plane && viewOfPlane(plane, of.lens);
  };
  const view = see(inputs);
  if (!view) return fail({ code: 'rim-not-elliptic' });
  // An input at its limit (a rim that would be no circle's) says nothing; that side then stays in place.
  const pair = (source: ViewExcursion['source'], change: (sign: number) => Partial<Inputs>): ViewExcursion => ({
    source,
    below: see({ ...inputs, ...change(-1) }) ?? view,
    above: see({ ...inputs, ...change(1) }) ?? view,
  });

  const excursions = rimChanges(marks).map((change) => pair('calibration', (sign) => ({ rim: change(sign) })));
  const { diameterStandardUncertaintyMm: diameterUncertaintyMm } = marks;
  if (diameterUncertaintyMm > 0) {
    excursions.push(pair('scale-object', (sign) => ({ diameterMm: marks.diameterMm + sign * diameterUncertaintyMm })));
  }
  const focalPx = focalStandardUncertaintyPx(lens, picture);
  if (focalPx > 0) excursions.push(pair('camera-distance', (sign) => ({ lens: { ...lens, focalPx: lens.focalPx + sign * focalPx } })));
  const chosen = marks.nearEdgeRad === null ? null : nearest(poses, marks.nearEdgeRad);
  if (chosen === null) {
    const [below, above] = [viewOfPose(poses[0], lens), viewOfPose(poses[1], lens)];
    excursions.push({ source: 'tilt-unknown', below, above });
  }
  return succeed({
    view,
    excursions,
    tiltDeg: chosen && tiltOf(chosen),
    solutions: [solutionOf(poses[0]), solutionOf(poses[1])],
  });
}

function solutionOf(pose: CirclePose): CoinSolution {
  return { tiltDeg: tiltOf(pose), nearEdgeRad: pose.nearEdgeRad };
}

function posesOf({ rim, diameterMm, lens }: Inputs): readonly [CirclePose, CirclePose] | null {
  const poses = circlePoses(rim, lens, diameterMm / 2);
  // A plane seen edge-on or from below is none to measure on.
  return poses?.every(({ normal }) => normal[2] > 0) ? poses : null;
}

function nearest([one, other]: readonly [CirclePose, CirclePose], nearEdgeRad: number): CirclePose {
  return Math.cos(one.nearEdgeRad - nearEdgeRad) >= Math.cos(other.nearEdgeRad - nearEdgeRad) ? one : other;
}

/** The chosen plane, or the one between both: their slopes lie to both sides of the plane across the line of sight. */
function planeOf(inputs: Inputs, nearEdgeRad: number | null): SlopedPlane | null {
  const poses = posesOf(inputs);
  if (!poses) return null;
  if (nearEdgeRad !== null) {
    const { centre, normal } = nearest(poses, nearEdgeRad);
    return planeThrough(centre, normal);
  }
  const [one, other] = poses.map(({ centre, normal }) => planeThrough(centre, normal));
  if (!one || !other) return null;
  return {
    slopeX: (one.slopeX + other.slopeX) / 2,
    slopeY: (one.slopeY + other.slopeY) / 2,
    depthMm: (one.depthMm + other.depthMm) / 2,
  };
}

function viewOfPose({ centre, normal }: CirclePose, lens: Lens): View {
  return viewOfPlane(planeThrough(centre, normal), lens);
}

/** The rim moved in its five independent ways: middle right and down, radius, and elongation along two directions at 45 degrees. */
function rimChanges(marks: CoinScale): readonly ((sign: number) => Ellipse)[] {
  const { rim, rimPx } = marks;
  const { alongPx, acrossPx } = elongationOf(rim);
  const deviationPx = elongationUncertaintyPx(marks);
  const [cos, sin] = [deviationPx * Math.cos(2 * rim.angleRad), deviationPx * Math.sin(2 * rim.angleRad)];
  const moved = (xPx: number, yPx: number): Ellipse => ({ ...rim, centre: { xPx: rim.centre.xPx + xPx, yPx: rim.centre.yPx + yPx } });
  return [
    (sign) => moved(sign * rimPx, 0),
    (sign) => moved(0, sign * rimPx),
    (sign) => ({ ...rim, semiMajorPx: rim.semiMajorPx + sign * rimPx, semiMinorPx: rim.semiMinorPx + sign * rimPx }),
    (sign) => withElongation(rim, { alongPx: alongPx + sign * cos, acrossPx: acrossPx + sign * sin }),
    (sign) => withElongation(rim, { alongPx: alongPx - sign * sin, acrossPx: acrossPx + sign * cos }),
  ];
}

/** Two independent clicks this uncertain, in units of `rimPx`, make a diameter as uncertain as radius and elongation together: 2 sqrt(3). */
const CLICK_PER_RIM = Math.sqrt(6);

function flatView(marks: CoinScale, picture: PictureFacts): Result<CoinGeometry> {
  const { rimPx, diameterMm, diameterStandardUncertaintyMm, thicknessMm } = marks;
  const rim = unbiasedRim(marks);
  const suggestedSlope = Math.tan(Math.acos(Math.min(1, rim.semiMinorPx / rim.semiMajorPx)));
  const flat = viewOfTwoPoints(
    {
      ends: [pointOn(rim, 0), pointOn(rim, Math.PI)],
      distanceMm: diameterMm,
      distanceStandardUncertaintyMm: diameterStandardUncertaintyMm,
      pointingPx: CLICK_PER_RIM * rimPx,
      heightMm: thicknessMm,
    },
    picture,
    suggestedSlope,
  );
  if (!flat.ok) return flat;
  return succeed({ ...flat.value, tiltDeg: null, solutions: null });
}
