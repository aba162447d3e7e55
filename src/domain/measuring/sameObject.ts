import type { ScaleMarks } from './calibration.ts';
import { distance } from './corners.ts';
import type { ImagePoint } from './points.ts';

/** The middle of what was marked on a scale object, in the picture. */
export function middleOf(marks: ScaleMarks): ImagePoint {
  switch (marks.kind) {
    case 'two-points':
      return meanOf(marks.ends);
    case 'rectangle':
      return meanOf(marks.corners);
    case 'coin':
      return marks.rim.centre;
    case 'points':
      return meanOf(marks.points.map(({ at }) => at));
    case 'rule-ticks':
      return meanOf(marks.ticks.flatMap(({ from, to }) => [from, to]));
  }
}

/**
 * Whether two marks are of one and the same card: of the same name, and each with its middle within the other. Handles may be far
 * from where they belong and still lie about the card.
 */
export function areOfOneCard(one: ScaleMarks, other: ScaleMarks): boolean {
  if (one.kind === 'rectangle' && other.kind === 'rectangle' && one.object === other.object) {
    return isWithin(one.corners, middleOf(other)) && isWithin(other.corners, middleOf(one));
  }
  if (one.kind === 'points' && other.kind === 'points' && one.object === other.object) {
    const apartPx = distance(middleOf(one), middleOf(other));
    return apartPx < reachOf(one.points) && apartPx < reachOf(other.points);
  }
  return false;
}

/** Whether two marks are likely of one and the same object: a card as above, else of one kind and each about the middle of the other. */
export function areOfOneObject(one: ScaleMarks, other: ScaleMarks): boolean {
  if (one.kind === 'coin' && other.kind === 'coin') {
    return distance(one.rim.centre, other.rim.centre) < Math.min(one.rim.semiMajorPx, other.rim.semiMajorPx);
  }
  if (one.kind === 'rule-ticks' && other.kind === 'rule-ticks') {
    const apartPx = distance(middleOf(one), middleOf(other));
    return [one, other].every(({ ticks }) => apartPx < reachOf(ticks.map(({ from }) => ({ at: from }))));
  }
  return areOfOneCard(one, other);
}

/** How far the farthest of these corners lies from the nearest of those, px. */
export function farthestCornerPx(corners: readonly ImagePoint[], found: readonly ImagePoint[]): number {
  return Math.max(...corners.map((corner) => Math.min(...found.map((at) => distance(corner, at)))));
}

function meanOf(points: readonly ImagePoint[]): ImagePoint {
  return {
    xPx: points.reduce((sum, { xPx }) => sum + xPx, 0) / points.length,
    yPx: points.reduce((sum, { yPx }) => sum + yPx, 0) / points.length,
  };
}

/** Corners run one way round: the point is on the same side of all four lines. */
function isWithin(corners: readonly ImagePoint[], { xPx, yPx }: ImagePoint): boolean {
  const sides = corners.map((from, index) => {
    const to = corners[(index + 1) % corners.length] ?? from;
    return Math.sign((to.xPx - from.xPx) * (yPx - from.yPx) - (to.yPx - from.yPx) * (xPx - from.xPx));
  });
  return sides.every((side) => side === sides[0] && side !== 0);
}

function reachOf(points: readonly { readonly at: ImagePoint }[]): number {
  const middle = meanOf(points.map(({ at }) => at));
  return Math.max(...points.map(({ at }) => distance(at, middle)));
}
