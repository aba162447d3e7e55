import type { ImagePoint } from '../../measuring/points.ts';
import type { LightPlanes } from '../light.ts';
import { type FittedLine, fitLine, intersect } from '../line.ts';
import { edgeSearch, stepsAcross } from '../profile.ts';
import type { FoundMarker } from './found.ts';

/** Outlines are found to about a pixel; small in the picture they may be off by more. */
const LEAST_REACH_PX = 2.5;
/** The black border of a marker is a sixth of its side wide: beyond that another edge begins. */
const REACH_SHARE = 0.07;
/** Near the corners the blur of the other edge bends the profile. */
const CORNER_SHARE = 0.12;
const MOST_SAMPLES = 60;

/**
 * The corners of a marker where its four outer edges meet, each fitted to steps of light across it: the metric of a marker
 * without a chessboard.
 *
 * @returns null when an edge is not seen.
 */
export function refineMarker(planes: LightPlanes, { corners }: FoundMarker): FoundMarker['corners'] | null {
  const [top, right, bottom, left] = corners.map((corner, index) => edgeLine(planes, corner, corners[(index + 1) % 4] ?? corner));
  if (!top || !right || !bottom || !left) return null;
  const [a, b, c, d] = [intersect(left, top), intersect(top, right), intersect(right, bottom), intersect(bottom, left)];
  return a && b && c && d ? [a.at, b.at, c.at, d.at] : null;
}

function edgeLine(planes: LightPlanes, from: ImagePoint, to: ImagePoint): FittedLine | null {
  const dx = to.xPx - from.xPx;
  const dy = to.yPx - from.yPx;
  const length = Math.hypot(dx, dy);
  const normal = { x: dy / length, y: -dx / length };
  const search = edgeSearch({ reachPx: Math.max(LEAST_REACH_PX, REACH_SHARE * length), stepPx: 0.25, sigmaPx: 0.8, alongPx: 1 });
  const count = Math.min(MOST_SAMPLES, Math.max(6, Math.round(length * (1 - 2 * CORNER_SHARE))));
  const points = Array.from({ length: count }, (_, index) => {
    const share = CORNER_SHARE + ((1 - 2 * CORNER_SHARE) * (index + 0.5)) / count;
    const x = from.xPx + share * dx;
    const y = from.yPx + share * dy;
    const [step] = stepsAcross(planes, x, y, normal, search);
    return step ? { xPx: x + step.offsetPx * normal.x, yPx: y + step.offsetPx * normal.y } : null;
  }).filter((point) => point !== null);
  return points.length >= count / 2 ? fitLine(points) : null;
}
