import type { Vector3 } from '../numerics/matrix3.ts';
import type { CoinScale } from './calibration.ts';
import type { Lens } from './camera.ts';
import { leanSine, type SightCone, sightCone } from './circlePose.ts';
import { elongationUncertaintyPx } from './coinRim.ts';
import { SLOPE_STANDARD_UNCERTAINTY } from './slopePrior.ts';

/** The slopes of a plane as far as they are known: mean, and mean products of the deviations from it. Tangents, no unit. */
export interface SlopeBelief {
  readonly slopeX: number;
  readonly slopeY: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  /** How much speaks for it, as a natural logarithm, to be compared with that for the other side of the same rim. */
  readonly logWeight: number;
}

/** Nodes of the midpoint rule, along the elongation and about it. */
const RADIAL_NODES = 24;
const TURNING_NODES = 32;
/** So many standard uncertainties of the elongation are looked at. */
const REACH = 5;

/**
 * What a rim tells of the slopes of its plane together with what is known of any picture: slopes near 0 within
 * `SLOPE_STANDARD_UNCERTAINTY` (a judgment, see there).
 *
 * The elongation of a rim grows with the square of its tilt, so near frontal the noise of a rim makes a tilt of many degrees where there is
 * none, with no first order. Hence Bayes' rule over all true elongations about the one that was found, weighted by its normal error and by the
 * prior of the slopes that follow. Elongation and twice its direction as polar coordinates are uniform in the slopes about the line of sight,
 * as far as the square holds.
 *
 * @param side which of the two planes an ellipse leaves possible, in the order of `circlePoses`.
 * @returns null when the ellipse is no picture of a circle in front of the camera.
 */
export function slopesOfRim(marks: Pick<CoinScale, 'rim' | 'rimPx'>, lens: Lens, side: 0 | 1): SlopeBelief | null {
  const cone = sightCone(marks.rim, lens);
  if (!cone) return null;
  const deviation = elongationUncertaintyPx(marks) / lens.focalPx;
  const mean = (cone.wideTan + cone.narrowTan) / 2;
  const found = cone.wideTan - cone.narrowTan;
  // The root of the elongation is as the tilt: evenly spaced, its nodes serve a prior on slopes as well as an error of the elongation.
  const least = Math.sqrt(Math.max(0, found - REACH * deviation));
  // A rim more elongated than twice its mean radius would have no width.
  const greatest = Math.sqrt(Math.min(found + REACH * deviation, 2 * mean));
  const turn = found > REACH * deviation ? Math.asin((REACH * deviation) / found) : Math.PI;
  const nodes: SlopeNode[] = [];
  for (let radial = 0; radial < RADIAL_NODES; radial += 1) {
    const root = least + ((greatest - least) * (radial + 0.5)) / RADIAL_NODES;
    const elongation = root * root;
    const sine = leanSine({ wideTan: mean + elongation / 2, narrowTan: mean - elongation / 2 });
    for (let turning = 0; turning < TURNING_NODES; turning += 1) {
      const twice = turn * ((2 * turning + 1) / TURNING_NODES - 1);
      const normal = leaning(cone, side === 0 ? sine : -sine, twice / 2);
      if (!(normal[2] > 0)) continue;
      const [slopeX, slopeY] = [-normal[0] / normal[2], -normal[1] / normal[2]];
      const offSquare = elongation ** 2 + found ** 2 - 2 * elongation * found * Math.cos(twice);
      const priorSquare = (slopeX ** 2 + slopeY ** 2) / SLOPE_STANDARD_UNCERTAINTY ** 2;
      // A step of the elongation is 2 root times that of its root.
      nodes.push({ slopeX, slopeY, logWeight: Math.log(root) - (offSquare / deviation ** 2 + priorSquare) / 2 });
    }
  }
  return momentsOf(nodes, (greatest - least) * turn);
}

interface SlopeNode {
  readonly slopeX: number;
  readonly slopeY: number;
  readonly logWeight: number;
}

function momentsOf(nodes: readonly SlopeNode[], cellSize: number): SlopeBelief | null {
  const highest = nodes.reduce((most, { logWeight }) => Math.max(most, logWeight), Number.NEGATIVE_INFINITY);
  let [sum, x, y, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  for (const { slopeX, slopeY, logWeight } of nodes) {
    const weight = Math.exp(logWeight - highest);
    sum += weight;
    x += weight * slopeX;
    y += weight * slopeY;
    xx += weight * slopeX * slopeX;
    xy += weight * slopeX * slopeY;
    yy += weight * slopeY * slopeY;
  }
  if (!(sum > 0)) return null;
  const [slopeX, slopeY] = [x / sum, y / sum];
  return {
    slopeX,
    slopeY,
    xx: Math.max(0, xx / sum - slopeX * slopeX),
    xy: xy / sum - slopeX * slopeY,
    yy: Math.max(0, yy / sum - slopeY * slopeY),
    logWeight: Math.log(sum * cellSize) + highest,
  };
}

/** The middle between the beliefs of both sides, as likely as each other, with half of their difference in the spread. */
export function betweenBoth([one, other]: readonly [SlopeBelief, SlopeBelief]): SlopeBelief {
  return mixed(one, other, 0.5);
}

/** As if the plane were level: what both sides leave possible is spread about slope 0, each as likely as the rim and the prior make it. */
export function aboutLevel([one, other]: readonly [SlopeBelief, SlopeBelief]): SlopeBelief {
  return spreadAbout({ slopeX: 0, slopeY: 0 }, mixed(one, other, 1 / (1 + Math.exp(other.logWeight - one.logWeight))));
}

/** The same belief about a plane of other slopes than its mean, which then counts as one more deviation. */
export function spreadAbout({ slopeX, slopeY }: Pick<SlopeBelief, 'slopeX' | 'slopeY'>, belief: SlopeBelief): SlopeBelief {
  const [dx, dy] = [belief.slopeX - slopeX, belief.slopeY - slopeY];
  return { ...belief, slopeX, slopeY, xx: belief.xx + dx * dx, xy: belief.xy + dx * dy, yy: belief.yy + dy * dy };
}

function mixed(one: SlopeBelief, other: SlopeBelief, share: number): SlopeBelief {
  const rest = 1 - share;
  const [dx, dy] = [one.slopeX - other.slopeX, one.slopeY - other.slopeY];
  return {
    slopeX: share * one.slopeX + rest * other.slopeX,
    slopeY: share * one.slopeY + rest * other.slopeY,
    xx: share * one.xx + rest * other.xx + share * rest * dx * dx,
    xy: share * one.xy + rest * other.xy + share * rest * dx * dy,
    yy: share * one.yy + rest * other.yy + share * rest * dy * dy,
    logWeight: Math.max(one.logWeight, other.logWeight),
  };
}

/** The directions in which slopes deviate independently, by their standard deviations. */
export function axesOfSpread({
  xx,
  xy,
  yy,
}: SlopeBelief): readonly { readonly x: number; readonly y: number; readonly deviation: number }[] {
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [x, y] = [Math.cos(angle), Math.sin(angle)];
  const along = xx * x * x + 2 * xy * x * y + yy * y * y;
  return [
    { x, y, deviation: Math.sqrt(Math.max(0, along)) },
    { x: -y, y: x, deviation: Math.sqrt(Math.max(0, xx + yy - along)) },
  ];
}

/** A normal that leans from the axis of the cone by an angle of this sine, about the widest direction turned by an angle. */
function leaning({ axis, wide, narrow }: SightCone, sine: number, turned: number): Vector3 {
  const cosine = Math.sqrt(1 - sine * sine);
  const [along, across] = [-sine * Math.sin(turned), sine * Math.cos(turned)];
  return [
    cosine * axis[0] + along * wide[0] + across * narrow[0],
    cosine * axis[1] + along * wide[1] + across * narrow[1],
    cosine * axis[2] + along * wide[2] + across * narrow[2],
  ];
}
