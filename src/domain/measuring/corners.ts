import { fail, type Result, succeed } from '../result.ts';
import type { ImagePoint } from './points.ts';

/** Corners of a rectangle in the picture, running round it; the side from the first to the second is the object's width. */
export type Corners = readonly [ImagePoint, ImagePoint, ImagePoint, ImagePoint];

/** Below this sine of the angle at a corner its two sides count as one line: about one degree. */
const STRAIGHT_SINE = 0.02;

/**
 * Whether four corners can be the picture of a rectangle seen from above: they run clockwise on the screen, and each
 * turns the same way by more than a degree.
 */
export function checkCorners(corners: Corners): Result<Corners> {
  const turns = turnsOf(corners);
  if (turns.some((turn) => !(Math.abs(turn) > STRAIGHT_SINE))) return fail({ code: 'corners-collinear' });
  const clockwise = turns.filter((turn) => turn > 0).length;
  if (clockwise === 0) return fail({ code: 'corners-mirrored' });
  if (clockwise < 4) return fail({ code: 'corners-not-convex' });
  return succeed(corners);
}

/** Sine of the turn at each corner, positive clockwise on the screen; NaN where two corners coincide. */
function turnsOf(corners: Corners): readonly number[] {
  return corners.map((corner, index) => {
    const before = corners[(index + 3) % 4] ?? corner;
    const after = corners[(index + 1) % 4] ?? corner;
    const inX = corner.xPx - before.xPx;
    const inY = corner.yPx - before.yPx;
    const outX = after.xPx - corner.xPx;
    const outY = after.yPx - corner.yPx;
    return (inX * outY - inY * outX) / (Math.hypot(inX, inY) * Math.hypot(outX, outY));
  });
}

/**
 * Brings four roughly placed handles, in any order, into the order a rectangle scale wants: clockwise on the screen, the
 * first side being the one whose proportion to the second fits the object better, starting near the top left of the screen.
 */
export function orderCorners(handles: Corners, size: { readonly widthMm: number; readonly heightMm: number }): Result<Corners> {
  const centreX = handles.reduce((sum, point) => sum + point.xPx, 0) / 4;
  const centreY = handles.reduce((sum, point) => sum + point.yPx, 0) / 4;
  const angleOf = (point: ImagePoint): number => Math.atan2(point.yPx - centreY, point.xPx - centreX);
  // With y down a growing angle runs clockwise on the screen.
  const [a, b, c, d] = handles.toSorted((one, other) => angleOf(one) - angleOf(other)) as [ImagePoint, ImagePoint, ImagePoint, ImagePoint];
  const checked = checkCorners([a, b, c, d]);
  if (!checked.ok) return checked;

  const proportion = Math.log((distance(a, b) + distance(c, d)) / (distance(b, c) + distance(d, a)));
  const wanted = Math.log(size.widthMm / size.heightMm);
  const candidates: readonly [Corners, Corners] =
    Math.abs(proportion - wanted) <= Math.abs(-proportion - wanted)
      ? [
          [a, b, c, d],
          [c, d, a, b],
        ]
      : [
          [b, c, d, a],
          [d, a, b, c],
        ];
  const [first, second] = candidates;
  return succeed(first[0].xPx + first[0].yPx <= second[0].xPx + second[0].yPx ? first : second);
}

export function distance(a: ImagePoint, b: ImagePoint): number {
  return Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx);
}
