import { assertNever } from '../../result.ts';
import type { RectangleScale, ScaleMarks } from '../calibration.ts';
import { type Ellipse, pointOn, withinHalfTurn } from '../ellipse.ts';
import type { ImagePoint } from '../points.ts';
import { type Sides, sidesMeet } from './sides.ts';

/** Where a point of the picture goes; smoothly, as a lens does it. */
export type Move = (at: ImagePoint) => ImagePoint;

/** Where all points of the marks go; what is known of the object itself stays. */
export function movedMarks<Marks extends ScaleMarks>(marks: Marks, move: Move): Marks;
export function movedMarks(marks: ScaleMarks, move: Move): ScaleMarks {
  switch (marks.kind) {
    case 'two-points':
      return { ...marks, ends: [move(marks.ends[0]), move(marks.ends[1])] };
    case 'rectangle':
      return movedRectangle(marks, move);
    case 'coin':
      return { ...marks, rim: movedEllipse(marks.rim, move) };
    case 'points':
      return { ...marks, points: marks.points.map((point) => ({ ...point, at: move(point.at) })) };
    case 'rule-ticks':
      return {
        ...marks,
        ends: [move(marks.ends[0]), move(marks.ends[1])],
        ticks: marks.ticks.map(({ number, from, to }) => ({ number, from: move(from), to: move(to) })),
      };
    default:
      return assertNever(marks);
  }
}

/**
 * Corners that were constructed from the sides are constructed again: where a side is bowed, its straight line passes beside the
 * corners, by up to two thirds of the bow.
 */
function movedRectangle(marks: RectangleScale, move: Move): RectangleScale {
  const [a, b, c, d] = marks.corners;
  if (marks.sidePoints === undefined) return { ...marks, corners: [move(a), move(b), move(c), move(d)] };
  const [top, right, bottom, left] = marks.sidePoints;
  const movedSide = (points: typeof top): typeof top => points.map((point) => ({ ...point, ...move(point) }));
  const sidePoints: Sides = [movedSide(top), movedSide(right), movedSide(bottom), movedSide(left)];
  const [before, after] = [sidesMeet(marks.sidePoints), sidesMeet(sidePoints)];
  const corner = (at: ImagePoint, index: 0 | 1 | 2 | 3): ImagePoint => {
    const [was, is] = [before[index], after[index]];
    if (!was || !is) return move(at);
    // Only what the bow did is taken from the sides: they were fitted more robustly than here.
    return { xPx: move(at).xPx + is.xPx - move(was).xPx, yPx: move(at).yPx + is.yPx - move(was).yPx };
  };
  return { ...marks, corners: [corner(a, 0), corner(b, 1), corner(c, 2), corner(d, 3)], sidePoints };
}

const RIM_POINTS = 16;

/** The mean and the first harmonic of the moved rim: the middle and two conjugate half-diameters of the ellipse nearest to it. */
function movedEllipse(rim: Ellipse, move: Move): Ellipse {
  const sum = { x: 0, y: 0, cosX: 0, cosY: 0, sinX: 0, sinY: 0 };
  for (let index = 0; index < RIM_POINTS; index += 1) {
    const angle = (2 * Math.PI * index) / RIM_POINTS;
    const { xPx, yPx } = move(pointOn(rim, angle));
    const [x, y] = [xPx - rim.centre.xPx, yPx - rim.centre.yPx];
    sum.x += x / RIM_POINTS;
    sum.y += y / RIM_POINTS;
    sum.cosX += (2 * x * Math.cos(angle)) / RIM_POINTS;
    sum.cosY += (2 * y * Math.cos(angle)) / RIM_POINTS;
    sum.sinX += (2 * x * Math.sin(angle)) / RIM_POINTS;
    sum.sinY += (2 * y * Math.sin(angle)) / RIM_POINTS;
  }
  const { cosX, cosY, sinX, sinY } = sum;
  // The distance from the middle is greatest at this angle and least a quarter further on.
  const turn = Math.atan2(2 * (cosX * sinX + cosY * sinY), cosX ** 2 + cosY ** 2 - sinX ** 2 - sinY ** 2) / 2;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [majorX, majorY] = [cosX * cos + sinX * sin, cosY * cos + sinY * sin];
  return {
    centre: { xPx: rim.centre.xPx + sum.x, yPx: rim.centre.yPx + sum.y },
    semiMajorPx: Math.hypot(majorX, majorY),
    semiMinorPx: Math.hypot(sinX * cos - cosX * sin, sinY * cos - cosY * sin),
    angleRad: withinHalfTurn(Math.atan2(majorY, majorX)),
  };
}
