import { focalStandardUncertaintyPx, type Lens, lensOf, type PictureFacts, poseOf } from '../measuring/camera.ts';
import type { Corners } from '../measuring/corners.ts';
import { fitHomography } from '../measuring/homography.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { rectangleOutline } from '../measuring/rectangleView.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { FoundRectangle, Four, RectangleShape } from './card.ts';
import { type FittedLine, intersect, type PointCovariance } from './line.ts';
import type { FoundSide } from './sideFit.ts';

type Meeting = NonNullable<ReturnType<typeof intersect>>;

/** Where four sides meet, beginning with the last and the first; null when neighbors are parallel. */
export function cornersOf(top: FittedLine, right: FittedLine, bottom: FittedLine, left: FittedLine): Four<Meeting> | null {
  const a = intersect(left, top);
  const b = intersect(top, right);
  const c = intersect(right, bottom);
  const d = intersect(bottom, left);
  return a && b && c && d ? [a, b, c, d] : null;
}

/**
 * Corners from the sides that were found. With one side missing the picture alone no longer tells its two corners: they are put on the
 * neighboring sides where a rectangle of the known proportions fits a camera with square pixels and the picture's focal
 * length. What is lost: the misfit of the shape can no longer give a wrong corner away, and an error of the focal length turns the plane.
 *
 * @param expected roughly where the corners are.
 */
export function constructCorners(
  sides: Four<FoundSide | null>,
  expected: Corners,
  shape: RectangleShape,
  picture: PictureFacts,
): Result<FoundRectangle> {
  const missing = sides.flatMap((side, index) => (side ? [] : [index]));
  const [top, right, bottom, left] = sides;
  if (top && right && bottom && left) {
    const met = cornersOf(top.line, right.line, bottom.line, left.line);
    if (!met) return fail({ code: 'corners-collinear' });
    const [a, b, c, d] = met;
    return succeed({ corners: [a.at, b.at, c.at, d.at], covariances: [a.covariance, b.covariance, c.covariance, d.covariance], sides });
  }
  const [hidden] = missing;
  const lens = lensOf(picture);
  if (missing.length !== 1 || hidden === undefined || !lens.known) return fail({ code: 'sides-not-found', sides: missing });
  // Turned so that the missing side comes last: from the fourth corner to the first.
  const turned = (index: number): Index => indexOf(hidden + 1 + index);
  const [first, second, third] = [0, 1, 2].flatMap((index) => sides[turned(index)]?.line ?? []);
  const start = [0, 1, 2, 3].map((index) => expected[turned(index)]);
  const lengths = hidden % 2 === 1 ? shape : { widthMm: shape.heightMm, heightMm: shape.widthMm };
  const [from, , , to] = start;
  if (!first || !second || !third || !from || !to) return fail({ code: 'sides-not-found', sides: missing });
  const solve = (lines: ThreeLines, through: Lens) => solveHidden(lines, from, to, lengths, through);
  const lines: ThreeLines = [first, second, third];
  const solved = solve(lines, lens);
  if (!solved) return fail({ code: 'sides-not-found', sides: missing });
  const covariances = propagate(solve, lines, lens, focalStandardUncertaintyPx(lens, picture), solved);
  const back = (index: number): Index => indexOf(index - hidden + 3);
  const corner = (index: number): ImagePoint => solved[back(index)];
  const covariance = (index: number): PointCovariance => covariances[back(index)];
  return succeed({
    corners: [corner(0), corner(1), corner(2), corner(3)],
    covariances: [covariance(0), covariance(1), covariance(2), covariance(3)],
    sides,
  });
}

type Index = 0 | 1 | 2 | 3;

/** Round the rectangle. */
function indexOf(count: number): Index {
  const [index = 0] = ([0, 1, 2, 3] as const).slice(count % 4);
  return index;
}

type ThreeLines = readonly [FittedLine, FittedLine, FittedLine];

const NEWTON_ROUNDS = 20;
const NEWTON_STEP_PX = 0.05;
const CONVERGED_PX = 1e-6;

/**
 * First corner on the first line, second and third where the lines meet, fourth on the third line; the first and fourth such that
 * the plane's axes come out with equal scale and at right angles (Zhang 2000, IEEE PAMI 22:1330, equations 3 and 4).
 */
function solveHidden(
  [first, second, third]: ThreeLines,
  from: ImagePoint,
  to: ImagePoint,
  size: { readonly widthMm: number; readonly heightMm: number },
  lens: Lens,
): Four<ImagePoint> | null {
  const b = intersect(first, second)?.at;
  const c = intersect(second, third)?.at;
  if (!b || !c) return null;
  let onFirst = alongOf(first, from);
  let onThird = alongOf(third, to);
  const misfit = (one: number, other: number): readonly [number, number] | null => {
    const fit = fitHomography(rectangleOutline(size), [pointOn(first, one), b, c, pointOn(third, other)]);
    if (!fit) return null;
    const pose = poseOf(fit.matrix, lens, { xMm: size.widthMm / 2, yMm: size.heightMm / 2 });
    return [pose.aspect - 1, pose.skew];
  };
  for (let round = 0; round < NEWTON_ROUNDS; round += 1) {
    const here = misfit(onFirst, onThird);
    const moved = misfit(onFirst + NEWTON_STEP_PX, onThird);
    const other = misfit(onFirst, onThird + NEWTON_STEP_PX);
    if (!here || !moved || !other) return null;
    const [a, d] = [(moved[0] - here[0]) / NEWTON_STEP_PX, (moved[1] - here[1]) / NEWTON_STEP_PX];
    const [e, g] = [(other[0] - here[0]) / NEWTON_STEP_PX, (other[1] - here[1]) / NEWTON_STEP_PX];
    const determinant = a * g - e * d;
    if (!(Math.abs(determinant) > 1e-18)) return null;
    const [stepFirst, stepThird] = [(here[0] * g - here[1] * e) / determinant, (here[1] * a - here[0] * d) / determinant];
    onFirst -= stepFirst;
    onThird -= stepThird;
    if (Math.hypot(stepFirst, stepThird) < CONVERGED_PX) return [pointOn(first, onFirst), b, c, pointOn(third, onThird)];
  }
  return null;
}

function alongOf({ through, alongX, alongY }: FittedLine, { xPx, yPx }: ImagePoint): number {
  return (xPx - through.xPx) * alongX + (yPx - through.yPx) * alongY;
}

function pointOn({ through, alongX, alongY }: FittedLine, along: number): ImagePoint {
  return { xPx: through.xPx + along * alongX, yPx: through.yPx + along * alongY };
}

/** First-order propagation with each input moved by its standard uncertainty (JCGM 100:2008, 5.1.3 NOTE 2). */
function propagate(
  solve: (lines: ThreeLines, lens: Lens) => Four<ImagePoint> | null,
  lines: ThreeLines,
  lens: Lens,
  focalUncertaintyPx: number,
  solved: Four<ImagePoint>,
): Four<PointCovariance> {
  const [first, second, third] = lines;
  const moved = [
    ...bothWays(first).map((line) => solve([line, second, third], lens)),
    ...bothWays(second).map((line) => solve([first, line, third], lens)),
    ...bothWays(third).map((line) => solve([first, second, line], lens)),
    solve(lines, { ...lens, focalPx: lens.focalPx + focalUncertaintyPx }),
  ];
  const covariance = (index: 0 | 1 | 2 | 3): PointCovariance => {
    let [xx, xy, yy] = [0, 0, 0];
    for (const corners of moved) {
      const dx = (corners ?? solved)[index].xPx - solved[index].xPx;
      const dy = (corners ?? solved)[index].yPx - solved[index].yPx;
      xx += dx * dx;
      xy += dx * dy;
      yy += dy * dy;
    }
    return { xx, xy, yy };
  };
  return [covariance(0), covariance(1), covariance(2), covariance(3)];
}

/** A line moved across, then turned, each by its standard uncertainty. */
function bothWays(line: FittedLine): readonly FittedLine[] {
  return [shifted(line, line.acrossUncertaintyPx), rotated(line, line.angleUncertaintyRad)];
}

function shifted(line: FittedLine, byPx: number): FittedLine {
  const { xPx, yPx } = line.through;
  return { ...line, through: { xPx: xPx - byPx * line.alongY, yPx: yPx + byPx * line.alongX } };
}

function rotated(line: FittedLine, byRad: number): FittedLine {
  const [sine, cosine] = [Math.sin(byRad), Math.cos(byRad)];
  return { ...line, alongX: cosine * line.alongX - sine * line.alongY, alongY: sine * line.alongX + cosine * line.alongY };
}
