import { dot, norm, type Vector3 } from '../numerics/matrix3.ts';
import { contribution } from '../numerics/propagation.ts';
import type { Calibration } from './calibrate.ts';
import type { CoinScale } from './calibration.ts';
import { type Lens, lensOf, type PictureFacts } from './camera.ts';
import { circlePoses } from './circlePose.ts';
import { type CoinSolution, viewOfCoin } from './coinView.ts';
import type { Estimate } from './quantity.ts';
import type { View } from './view.ts';

/** Planes of two objects on one table agree within this; own assumption: small objects seen near straight down tell their plane to a few degrees. */
const SAME_TABLE_DEG = 8;
/** The better solution must be nearer by this, or both fit. */
const CLEARLY_NEARER_DEG = 3;
/** The other object's plane must lie this many standard uncertainties to one side of the middle between both solutions. */
const SIDE_COVERAGE = 3;

/**
 * Which edge of the coin was nearer to the camera, by a second object on the same table.
 *
 * @param other what that object tells of the same picture.
 * @returns null when the focal length is unknown, when the other object does not know its own tilt well enough to tell the two
 * solutions apart, when neither lies in its plane, or both nearly do.
 */
export function nearEdgeBySecondObject(
  marks: CoinScale,
  picture: PictureFacts,
  other: Pick<Calibration, 'view' | 'excursions' | 'tiltDeg'>,
): number | null {
  const lens = lensOf(picture);
  // A scale that knows nothing of its tilt is taken as level, which would always speak for the less tilted solution.
  if (!lens.known || other.tiltDeg === null || other.excursions.some(({ source }) => source === 'tilt-unknown')) return null;
  const poses = circlePoses(marks.rim, lens, marks.diameterMm / 2);
  if (!poses) return null;
  const table = normalOf(other.view, lens);
  const [better, worse] = poses
    .map(({ normal, nearEdgeRad }) => ({ normal, nearEdgeRad, apartDeg: angleDeg(normal, table) }))
    .toSorted((one, another) => one.apartDeg - another.apartDeg);
  if (!better || !worse) return null;
  if (better.apartDeg > SAME_TABLE_DEG || worse.apartDeg - better.apartDeg < CLEARLY_NEARER_DEG) return null;
  const [towards, away] = [unit(better.normal), unit(worse.normal)];
  const between: Vector3 = unit([towards[0] - away[0], towards[1] - away[1], towards[2] - away[2]]);
  // 0 for a plane in the middle between the two solutions, which are as far from it on either side.
  const side = (seen: View): number => dot(unit(normalOf(seen, lens)), between);
  const uncertainty = Math.hypot(...other.excursions.map((excursion) => contribution(side, excursion)));
  return side(other.view) > SIDE_COVERAGE * uncertainty ? better.nearEdgeRad : null;
}

function unit([x, y, z]: Vector3): Vector3 {
  const length = norm([x, y, z]);
  return [x / length, y / length, z / length];
}

/**
 * The two possibilities for asking the keeper, the less tilted first: a phone is seldom held far from level, so it is the
 * likelier one. A suggestion, never a decision.
 */
export function coinSolutions(marks: CoinScale, picture: PictureFacts): readonly [CoinSolution, CoinSolution] | null {
  const geometry = viewOfCoin(marks, picture);
  if (!geometry.ok || !geometry.value.solutions) return null;
  const [one, other] = geometry.value.solutions;
  return one.tiltDeg <= other.tiltDeg ? [one, other] : [other, one];
}

/** Two planes tilted by less than this and towards each other's side differ by less than a rim is known. Own judgment. */
const ALIKE_DEG = 1;

/** The same as `coinSolutions`; null also where both are so alike that nobody needs to be asked. */
export function sidesToAskFor(marks: CoinScale, picture: PictureFacts): readonly [CoinSolution, CoinSolution] | null {
  const solutions = coinSolutions(marks, picture);
  return solutions?.some(({ tiltDeg }) => tiltDeg >= ALIKE_DEG) ? solutions : null;
}

/**
 * Whether a length is less certain since the keeper said which edge was nearer than it was before. Of a rim that hardly tells its tilt,
 * `viewOfCoin` believes a camera near level while nobody says an edge; who says one vouches for the outline's tilt, and how far that
 * lies from what is believed of any picture counts as uncertainty, the more the farther a length lies from the coin.
 *
 * @param lengthBy the length under other marks; null where they give none.
 */
export function sayingWidens(marks: CoinScale, lengthBy: (marks: CoinScale) => Estimate | null): boolean {
  if (marks.nearEdgeRad === null) return false;
  const [said, open] = [lengthBy(marks), lengthBy({ ...marks, nearEdgeRad: null })];
  return said !== null && open !== null && said.expandedUncertainty > open.expandedUncertainty;
}

/** Normal of a view's plane in the camera's frame, away from the camera: the plane's horizon is where it meets a ray at right angles. */
function normalOf({ imageToPlane: m }: View, { focalPx, centre }: Lens): Vector3 {
  return [m[6] * focalPx, m[7] * focalPx, m[6] * centre.xPx + m[7] * centre.yPx + m[8]];
}

function angleDeg(one: Vector3, other: Vector3): number {
  return (Math.acos(Math.max(-1, Math.min(1, dot(one, other) / (norm(one) * norm(other))))) * 180) / Math.PI;
}
