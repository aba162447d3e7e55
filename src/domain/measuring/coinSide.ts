import { dot, norm, type Vector3 } from '../numerics/matrix3.ts';
import type { CoinScale } from './calibration.ts';
import { type Lens, lensOf, type PictureFacts } from './camera.ts';
import { circlePoses } from './circlePose.ts';
import { type CoinSolution, viewOfCoin } from './coinView.ts';
import type { View } from './view.ts';

/** Planes of two objects on one table agree within this; own assumption: small objects seen near straight down tell their plane to a few degrees. */
const SAME_TABLE_DEG = 8;
/** The better solution must be nearer by this, or both fit. */
const CLEARLY_NEARER_DEG = 3;

/**
 * Which edge of the coin was nearer to the camera, by a second object on the same table.
 *
 * @param other the view of that object in the same picture.
 * @returns null when the focal length is unknown, when neither solution lies in the other object's plane, or both nearly do.
 */
export function nearEdgeBySecondObject(marks: CoinScale, picture: PictureFacts, other: View): number | null {
  const lens = lensOf(picture);
  if (!lens.known) return null;
  const poses = circlePoses(marks.rim, lens, marks.diameterMm / 2);
  if (!poses) return null;
  const table = normalOf(other, lens);
  const [better, worse] = poses
    .map(({ normal, nearEdgeRad }) => ({ nearEdgeRad, apartDeg: angleDeg(normal, table) }))
    .toSorted((one, another) => one.apartDeg - another.apartDeg);
  if (!better || !worse) return null;
  return better.apartDeg <= SAME_TABLE_DEG && worse.apartDeg - better.apartDeg >= CLEARLY_NEARER_DEG ? better.nearEdgeRad : null;
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

/** Normal of a view's plane in the camera's frame, away from the camera: the plane's horizon is where it meets a ray at right angles. */
function normalOf({ imageToPlane: m }: View, { focalPx, centre }: Lens): Vector3 {
  return [m[6] * focalPx, m[7] * focalPx, m[6] * centre.xPx + m[7] * centre.yPx + m[8]];
}

function angleDeg(one: Vector3, other: Vector3): number {
  return (Math.acos(Math.max(-1, Math.min(1, dot(one, other) / (norm(one) * norm(other))))) * 180) / Math.PI;
}
