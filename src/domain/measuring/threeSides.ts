import { CholeskyDecomposition, inverse, Matrix, QrDecomposition } from 'ml-matrix';
import { dot, type Vector3 } from '../numerics/matrix3.ts';
import type { RectangleScale } from './calibration.ts';
import type { Lens } from './camera.ts';
import type { Corners } from './corners.ts';
import { EDGE_UNCERTAINTY_MM } from './knownRectangles.ts';
import { meetingOf, type SideLine, type Sides, sideLine } from './lens/sides.ts';
import type { ImagePoint } from './points.ts';
import { axesOf } from './slopedPlane.ts';
import { SLOPE_STANDARD_UNCERTAINTY } from './slopePrior.ts';

/** Numbers the sides of a rectangle: from the first to the second corner is 0, and on. */
export type SideNumber = 0 | 1 | 2 | 3;

/** Three sides of a rectangle, round it: both beside the one that was not seen, and the one opposite to it. */
export interface ThreeSides {
  readonly hidden: SideNumber;
  readonly lines: readonly [before: SideLine, opposite: SideLine, after: SideLine];
  /** Of the side opposite to the hidden one, which gives the scale, and of both others. */
  readonly oppositeMm: number;
  readonly flankMm: number;
}

/** Three lines and no fourth; null for any other number of them. */
export function threeSidesOf(sides: Sides, { widthMm, heightMm }: Pick<RectangleScale, 'widthMm' | 'heightMm'>): ThreeSides | null {
  const all = sides.map(sideLine);
  const hidden = all.indexOf(null);
  if (hidden < 0) return null;
  const [before, opposite, after] = [1, 2, 3].map((step) => all[(hidden + step) % 4] ?? null);
  if (!before || !opposite || !after) return null;
  const [oppositeMm, flankMm] = hidden % 2 === 0 ? [widthMm, heightMm] : [heightMm, widthMm];
  return { hidden: sideNumber(hidden), lines: [before, opposite, after], oppositeMm, flankMm };
}

/** The plane of three sides. */
export interface ThreeSidedFit {
  readonly parameters: Parameters;
  /** Of the parameters; the focal length and the object's size count as known. */
  readonly covariance: Matrix;
  /** Independent changes of the parameters, one standard uncertainty each, that together make up the covariance. */
  readonly changes: readonly (readonly number[])[];
}

/** Slopes of the plane, natural logarithm of its depth in mm, direction of the first line in the plane in rad, where first and second meet in mm. */
export type Parameters = readonly [slopeX: number, slopeY: number, logDepth: number, direction: number, xMm: number, yMm: number];

const ROUNDS = 40;
/** What a step would still better the misfit by: a ten-thousandth of a standard uncertainty, squared. */
const CONVERGED = 1e-8;

/**
 * The plane of a rectangle of which one side is hidden. Where both flanks meet tells their direction in space, and the third side stands
 * at right angles to it: their vanishing points (Hartley & Zisserman, Multiple View Geometry, 2nd edition, section 8.6) give the slopes,
 * the third side's length the depth. Each line is two observations, across and turned, with its own uncertainty; where the third side
 * runs through the middle of the picture its direction says little of the slope along it, which then stays as uncertain as it is of
 * any picture (slopes near 0 within `SLOPE_STANDARD_UNCERTAINTY`). Fitted by Gauss-Newton.
 *
 * @returns null when the lines are those of no rectangle before the camera.
 */
export function fitThreeSides(sides: ThreeSides, lens: Lens): ThreeSidedFit | null {
  let parameters = startOf(sides, lens);
  for (let round = 0; round < ROUNDS && parameters; round += 1) {
    const { rows, residuals } = linearize(sides, lens, parameters);
    if (![...rows.flat(), ...residuals].every(Number.isFinite)) return null;
    const design = new Matrix(rows);
    const qr = new QrDecomposition(design);
    if (!qr.isFullRank()) return null;
    const step = qr.solve(Matrix.columnVector(residuals.map((value) => -value))).to1DArray();
    if (design.mmul(Matrix.columnVector(step)).norm() ** 2 < CONVERGED) return { parameters, ...spreadOf(design) };
    parameters = improved(sides, lens, parameters, step);
  }
  return null;
}

function spreadOf(design: Matrix): Omit<ThreeSidedFit, 'parameters'> {
  const inverted = inverse(design.transpose().mmul(design));
  const covariance = Matrix.add(inverted, inverted.transpose()).mul(0.5);
  const factor = new CholeskyDecomposition(covariance).lowerTriangularMatrix;
  return { covariance, changes: Array.from({ length: covariance.columns }, (_, column) => factor.getColumn(column)) };
}

/** As far along a step as the misfit grows no more; null where it does so from the beginning. */
function improved(sides: ThreeSides, lens: Lens, from: Parameters, step: readonly number[]): Parameters | null {
  const misfit = (parameters: Parameters): number => residualsOf(sides, lens, parameters).reduce((sum, value) => sum + value * value, 0);
  const most = misfit(from) * (1 + 1e-9) + 1e-12;
  for (let share = 1; share > 1e-4; share /= 2) {
    const to = shift(
      from,
      step.map((value) => share * value),
    );
    if (misfit(to) <= most) return to;
  }
  return null;
}

/** All four corners as these parameters put them, in the order of the marks; null where one lies behind the camera. */
export function cornersOfThree({ hidden, oppositeMm, flankMm }: ThreeSides, lens: Lens, parameters: Parameters): Corners | null {
  const see = projection(parameters, lens);
  const round = [see(-flankMm, 0), see(0, 0), see(0, oppositeMm), see(-flankMm, oppositeMm)];
  const corner = (index: number): ImagePoint | null => round[(index - hidden + 3) % 4] ?? null;
  const [a, b, c, d] = [corner(0), corner(1), corner(2), corner(3)];
  return a && b && c && d ? [a, b, c, d] : null;
}

export function shift(parameters: Parameters, by: readonly number[]): Parameters {
  const [a, b, c, d, e, f] = parameters;
  const [p = 0, q = 0, r = 0, s = 0, t = 0, u = 0] = by;
  return [a + p, b + q, c + r, d + s, e + t, f + u];
}

/** Seen straight from above. */
function startOf({ lines: [before, opposite, after], oppositeMm }: ThreeSides, { focalPx, centre }: Lens): Parameters | null {
  const [from, to] = [meetingOf(before, opposite), meetingOf(opposite, after)];
  if (!from || !to) return null;
  const mmPerPx = oppositeMm / Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
  if (!Number.isFinite(mmPerPx)) return null;
  // A quarter turn back from the side that was seen.
  const direction = Math.atan2(from.xPx - to.xPx, to.yPx - from.yPx);
  return [0, 0, Math.log(focalPx * mmPerPx), direction, (from.xPx - centre.xPx) * mmPerPx, (from.yPx - centre.yPx) * mmPerPx];
}

/**
 * Where the rectangle's points are seen: along the first line from where it meets the second, and along the second. Null behind the
 * camera.
 */
function projection([slopeX, slopeY, logDepth, direction, xMm, yMm]: Parameters, { focalPx, centre }: Lens) {
  const { right, down, towards } = axesOf({ slopeX, slopeY });
  const depthMm = Math.exp(logDepth);
  const toFoot = depthMm / dot(towards, towards);
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  return (firstMm: number, secondMm: number): ImagePoint | null => {
    const x = xMm + firstMm * cosine - secondMm * sine;
    const y = yMm + firstMm * sine + secondMm * cosine;
    const coordinate = (axis: 0 | 1 | 2): number => toFoot * towards[axis] + x * right[axis] + y * down[axis];
    const at: Vector3 = [coordinate(0), coordinate(1), coordinate(2)];
    if (!(at[2] > 0)) return null;
    return { xPx: centre.xPx + (focalPx * at[0]) / at[2], yPx: centre.yPx + (focalPx * at[1]) / at[2] };
  };
}

/** How far each line lies from where it should be seen, across and turned, in units of its uncertainty; then what is known of slopes. */
function residualsOf({ lines, oppositeMm }: ThreeSides, lens: Lens, parameters: Parameters): readonly number[] {
  const see = projection(parameters, lens);
  const [b, c] = [see(0, 0), see(0, oppositeMm)];
  // Any two points of the flanks do; these are before the camera whenever the side that was seen is.
  const ends = [[see(-0.5 * oppositeMm, 0), b] as const, [b, c] as const, [c, see(-0.5 * oppositeMm, oppositeMm)] as const];
  const lineResiduals = lines.flatMap((line, index) => {
    const [from, to] = ends[index] ?? [null, null];
    if (!from || !to) return [Number.NaN, Number.NaN];
    const length = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
    const [alongX, alongY] = [(to.xPx - from.xPx) / length, (to.yPx - from.yPx) / length];
    const across = (line.through.yPx - from.yPx) * alongX - (line.through.xPx - from.xPx) * alongY;
    const turned = line.alongY * alongX - line.alongX * alongY;
    const edgePx = (EDGE_UNCERTAINTY_MM * Math.hypot(...difference(b, c))) / oppositeMm;
    return [across / Math.hypot(line.acrossPx, edgePx), turned / line.angleRad];
  });
  const [slopeX, slopeY] = parameters;
  return [...lineResiduals, slopeX / SLOPE_STANDARD_UNCERTAINTY, slopeY / SLOPE_STANDARD_UNCERTAINTY];
}

function difference(one: ImagePoint | null, other: ImagePoint | null): readonly [number, number] {
  return one && other ? [other.xPx - one.xPx, other.yPx - one.yPx] : [Number.NaN, Number.NaN];
}

const STEPS: Parameters = [1e-5, 1e-5, 1e-5, 1e-5, 1e-3, 1e-3];

function linearize(sides: ThreeSides, lens: Lens, parameters: Parameters) {
  const residuals = residualsOf(sides, lens, parameters);
  const columns = STEPS.map((step, index) => {
    const by = STEPS.map((_, at) => (at === index ? step : 0));
    const back = by.map((value) => -value);
    const [above, below] = [residualsOf(sides, lens, shift(parameters, by)), residualsOf(sides, lens, shift(parameters, back))];
    return residuals.map((_, row) => ((above[row] ?? Number.NaN) - (below[row] ?? Number.NaN)) / (2 * step));
  });
  return { residuals, rows: residuals.map((_, row) => columns.map((column) => column[row] ?? Number.NaN)) };
}

function sideNumber(index: number): SideNumber {
  const [number = 0] = ([0, 1, 2, 3] as const).slice(index % 4);
  return number;
}
