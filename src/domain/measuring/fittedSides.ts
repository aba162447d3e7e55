import type { RectangleScale } from './calibration.ts';
import { distance } from './corners.ts';
import { meetingOf, type SideLine, type Sides, sideLine, sidesMeet } from './lens/sides.ts';
import type { ImagePoint } from './points.ts';

type FourLines = readonly [SideLine, SideLine, SideLine, SideLine];
/** By how much each corner moves, px. */
export type CornerShifts = readonly [ImagePoint, ImagePoint, ImagePoint, ImagePoint];

/** Four sides that corners were constructed from, and how far each of them may lie off as a whole. */
export interface FittedSides {
  readonly sides: Sides;
  readonly lines: FourLines;
  /** Standard uncertainty of a side's place across itself, px, beyond what its points show: an edge that all of them took for another. */
  readonly bodilyPx: number;
}

/**
 * Two corners share the side between them: moved as a whole it moves both alike, which eight independent errors of four corners would
 * not tell. What its points show is stored with them; the rest of `pointingPx`, which counts all that is uncertain of a corner, is taken
 * as an error of whole sides, the same for each.
 *
 * @returns null unless all four sides were seen.
 */
export function fittedSidesOf({ sidePoints, corners, pointingPx }: RectangleScale): FittedSides | null {
  if (!sidePoints) return null;
  const [a, b, c, d] = [sideLine(sidePoints[0]), sideLine(sidePoints[1]), sideLine(sidePoints[2]), sideLine(sidePoints[3])];
  if (!a || !b || !c || !d || sidesMeet(sidePoints).includes(null)) return null;
  const lines: FourLines = [a, b, c, d];
  // A corner's variance per coordinate is the mean of both of its sides' there, for sides that stand about at right angles.
  const shown = lines.map(({ through, acrossPx, angleRad }, index) => {
    const ends = [corners[index], corners[(index + 1) % 4]].map((corner) => (corner ? distance(corner, through) ** 2 : 0));
    return acrossPx ** 2 + (angleRad ** 2 * sum(ends)) / ends.length;
  });
  return { sides: sidePoints, lines, bodilyPx: Math.sqrt(Math.max(0, pointingPx ** 2 - sum(shown) / 4)) };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** What the corners do when each side in turn moves across itself, and then turns, by its standard uncertainty: eight independent errors. */
export function sideErrors({ lines, bodilyPx }: FittedSides): CornerShifts[] {
  const errors = lines.flatMap((line, index) => {
    const others = (elsewhere: SideLine) => lines.map((one, at) => (at === index ? elsewhere : one));
    return [others(moved(line, Math.hypot(line.acrossPx, bodilyPx))), others(turned(line, line.angleRad))];
  });
  return errors.map((elsewhere) => cornerShifts(lines, elsewhere)).filter((shifts) => shifts !== null);
}

/** How far each corner goes where the sides lie elsewhere; null where they meet no more. */
export function cornerShifts(lines: readonly SideLine[], elsewhere: readonly SideLine[]): CornerShifts | null {
  const shifts = lines.flatMap((_, index) => {
    const [from, to] = [cornerAt(lines, index), cornerAt(elsewhere, index)];
    return from && to ? [{ xPx: to.xPx - from.xPx, yPx: to.yPx - from.yPx }] : [];
  });
  const [a, b, c, d] = shifts;
  return a && b && c && d ? [a, b, c, d] : null;
}

/** Where a side begins: each begins where the one before it ends. */
function cornerAt(lines: readonly SideLine[], index: number): ImagePoint | null {
  const [before, here] = [lines.at(index - 1), lines[index]];
  return before && here ? meetingOf(before, here) : null;
}

/** Across itself, to the side on which the picture's y axis lies for a line along its x axis. */
export function moved(line: SideLine, byPx: number): SideLine {
  const { xPx, yPx } = line.through;
  return { ...line, through: { xPx: xPx - byPx * line.alongY, yPx: yPx + byPx * line.alongX } };
}

/** About its middle. */
export function turned(line: SideLine, byRad: number): SideLine {
  const [cosine, sine] = [Math.cos(byRad), Math.sin(byRad)];
  return { ...line, alongX: line.alongX * cosine - line.alongY * sine, alongY: line.alongY * cosine + line.alongX * sine };
}
