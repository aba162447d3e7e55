import { inverse, Matrix, QrDecomposition } from 'ml-matrix';
import { dot, type Vector3 } from '../numerics/matrix3.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { RuleTicksScale } from './calibration.ts';
import { type Lens, lensOf, type PictureFacts, refocused } from './camera.ts';
import { distance } from './corners.ts';
import { planeExcursions, slopeUncertainty } from './planeExcursions.ts';
import type { ImagePoint } from './points.ts';
import { axesOf, viewOfPlane } from './slopedPlane.ts';
import { SLOPE_STANDARD_UNCERTAINTY } from './slopePrior.ts';
import type { View, ViewExcursion } from './view.ts';

export interface RuleGeometry {
  readonly view: View;
  readonly excursions: readonly ViewExcursion[];
  readonly tiltDeg: number;
  /** Its part along the rule, positive where the rule goes away from the camera, and that across, each with its standard uncertainty. */
  readonly along: TiltPart;
  readonly across: TiltPart;
  /** Standard uncertainty of the tilt in the direction in which it is least well known. */
  readonly tiltUncertaintyDeg: number;
  /** Root mean square distance of the ticks' points from the fitted ticks, px. */
  readonly residualPx: number;
}

export interface TiltPart {
  readonly tiltDeg: number;
  readonly uncertaintyDeg: number;
}

/** Slopes of the plane, natural logarithm of its depth in mm, direction of the rule in the plane in rad, place of tick 0 in mm. */
type Parameters = readonly [slopeX: number, slopeY: number, logDepth: number, direction: number, zeroMm: number];

const ROUNDS = 30;
const CONVERGED = 1e-10;

/**
 * The plane of a rule from its ticks. Each tick is a straight line X = zero + number x graduation of the plane, so each of its points
 * p in the picture satisfies X(p) = h1 p / h3 p; the five ratios of the two rows are the two slopes, depth, direction and zero of a plane
 * before a camera of known focal length. The change of the spacing tells the slope along the rule, the fanning of the ticks that
 * across it: their vanishing points (Hartley & Zisserman, Multiple View Geometry, 2nd edition, section 8.6). Fitted by
 * Gauss-Newton on the distances of the points from the ticks in the picture, with what is known of any picture beforehand
 * (slopes near 0 within `SLOPE_STANDARD_UNCERTAINTY`) as two more observations: with short or few ticks the slope across
 * stays as uncertain as it is, and no more.
 */
export function viewOfRule(marks: RuleTicksScale, picture: PictureFacts): Result<RuleGeometry> {
  const lens = lensOf(picture);
  const start = startOf(marks, lens);
  if (!start) return fail({ code: 'scale-points-coincide' });
  const fit = fitPlane(marks, lens, start);
  if (!fit) return fail({ code: 'ticks-not-found', found: marks.ticks.length, needed: 4 });
  const viewAt = ([slopeX, slopeY, logDepth]: Parameters, through: Lens = lens): View =>
    viewOfPlane({ slopeX, slopeY, depthMm: Math.exp(logDepth) }, through);

  const excursions: ViewExcursion[] = planeExcursions(fit.covariance, ([slopeX, slopeY, logDepth]) =>
    viewAt(shift(fit.parameters, [slopeX, slopeY, logDepth])),
  );
  const share = marks.spanStandardUncertaintyMm / spanMm(marks);
  if (share > 0) {
    const stretched = (sign: number): View => viewAt(shift(fit.parameters, [0, 0, Math.log1p(sign * share), 0, 0]));
    excursions.push({ source: 'scale-object', below: stretched(-1), above: stretched(1) });
  }
  // The spacing tells the slope through the focal length, so a stand-in for it leaves much of the slope open.
  const through = (deviations: number): View => {
    const other = refocused(lens, picture, deviations);
    return viewAt(fitPlane(marks, other, fit.parameters)?.parameters ?? fit.parameters, other);
  };
  excursions.push({ source: 'camera-distance', below: through(-1), above: through(1) });
  const [slopeX, slopeY, , direction] = fit.parameters;
  return succeed({
    view: viewAt(fit.parameters),
    excursions,
    tiltDeg: degrees(Math.atan(Math.hypot(slopeX, slopeY))),
    along: tiltPart(fit, direction),
    across: tiltPart(fit, direction + Math.PI / 2),
    tiltUncertaintyDeg: degrees(slopeUncertainty(fit.covariance)),
    residualPx: fit.residualPx,
  });
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

function tiltPart({ parameters: [slopeX, slopeY], covariance }: Pick<PlaneFit, 'parameters' | 'covariance'>, direction: number): TiltPart {
  const [x, y] = [Math.cos(direction), Math.sin(direction)];
  const variance = x * x * covariance.get(0, 0) + 2 * x * y * covariance.get(0, 1) + y * y * covariance.get(1, 1);
  return { tiltDeg: degrees(Math.atan(slopeX * x + slopeY * y)), uncertaintyDeg: degrees(Math.sqrt(variance)) };
}

function spanMm({ ticks, graduationMm }: RuleTicksScale): number {
  const numbers = ticks.map(({ number }) => number);
  return (Math.max(...numbers) - Math.min(...numbers)) * graduationMm;
}

/** Seen straight from above, from the outermost ticks. */
function startOf(marks: RuleTicksScale, { focalPx, centre }: Lens): Parameters | null {
  const sorted = marks.ticks.toSorted((one, other) => one.number - other.number);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last || first.number === last.number) return null;
  const lengthPx = distance(first.from, last.from);
  if (!(lengthPx > 0)) return null;
  const depthMm = (spanMm(marks) * focalPx) / lengthPx;
  const direction = Math.atan2(last.from.yPx - first.from.yPx, last.from.xPx - first.from.xPx);
  const along =
    ((first.from.xPx - centre.xPx) * Math.cos(direction) + (first.from.yPx - centre.yPx) * Math.sin(direction)) * (depthMm / focalPx);
  return [0, 0, Math.log(depthMm), direction, along - first.number * marks.graduationMm];
}

interface PlaneFit {
  readonly parameters: Parameters;
  readonly covariance: Matrix;
  readonly residualPx: number;
}

function fitPlane(marks: RuleTicksScale, lens: Lens, start: Parameters): PlaneFit | null {
  let parameters = start;
  for (let round = 0; round < ROUNDS; round += 1) {
    const { rows, residuals } = linearize(marks, lens, parameters);
    const qr = new QrDecomposition(new Matrix(rows));
    if (!qr.isFullRank()) return null;
    const step = qr.solve(Matrix.columnVector(residuals)).to1DArray();
    parameters = shift(parameters, step);
    if (!parameters.every(Number.isFinite)) return null;
    if (Math.hypot(...step) < CONVERGED) break;
  }
  const { rows, residuals, squaresPx2 } = linearize(marks, lens, parameters);
  const design = new Matrix(rows);
  const points = 2 * marks.ticks.length;
  // Scatter beyond what the ticks' own uncertainty explains (a bent rule, a distorting lens) widens the covariance.
  const excess = Math.max(1, excessOf(residuals.slice(0, points)));
  return {
    parameters,
    covariance: symmetric(inverse(design.transpose().mmul(design)).mul(excess)),
    residualPx: Math.sqrt(squaresPx2 / points),
  };
}

/**
 * Mean square of the residuals over what the points' uncertainty lets expect: of all points, or of whole ticks where that is more. What
 * the rule is off shifts both points of a tick alike, so that they count once.
 */
function excessOf(residuals: readonly number[]): number {
  const ticks = residuals.length / 2;
  let [points, whole] = [0, 0];
  for (let tick = 0; tick < ticks; tick += 1) {
    const [from, to] = [residuals[2 * tick] ?? 0, residuals[2 * tick + 1] ?? 0];
    points += from * from + to * to;
    whole += (from + to) ** 2 / 2;
  }
  return Math.max(points / Math.max(1, 2 * ticks - 5), whole / Math.max(1, ticks - 4));
}

/** Without the rounding that makes an inverse differ from its transpose. */
function symmetric(matrix: Matrix): Matrix {
  return Matrix.add(matrix, matrix.transpose()).mul(0.5);
}

function shift(parameters: Parameters, by: readonly number[]): Parameters {
  const [slopeX, slopeY, logDepth, direction, zeroMm] = parameters;
  return [slopeX + (by[0] ?? 0), slopeY + (by[1] ?? 0), logDepth + (by[2] ?? 0), direction + (by[3] ?? 0), zeroMm + (by[4] ?? 0)];
}

const STEPS: Parameters = [1e-6, 1e-6, 1e-7, 1e-7, 1e-5];

/** Distances from the ticks in units of their uncertainty, and their derivatives by the parameters (central differences). */
function linearize(marks: RuleTicksScale, lens: Lens, parameters: Parameters) {
  const rows: number[][] = [];
  const residuals: number[] = [];
  let squaresPx2 = 0;
  const here = ruleCoordinate(parameters, lens);
  const moved = STEPS.map((step, index) => {
    const by = [0, 0, 0, 0, 0];
    by[index] = step;
    const back = by.map((value) => -value);
    return { step, above: ruleCoordinate(shift(parameters, by), lens), below: ruleCoordinate(shift(parameters, back), lens) };
  });
  for (const { number, from, to } of marks.ticks) {
    for (const at of [from, to]) {
      const { alongMm, mmPerPx } = here(at);
      const offPx = (number * marks.graduationMm - alongMm) / mmPerPx;
      squaresPx2 += offPx * offPx;
      residuals.push(offPx / marks.tickPx);
      rows.push(moved.map(({ step, above, below }) => (above(at).alongMm - below(at).alongMm) / (2 * step * mmPerPx * marks.tickPx)));
    }
  }
  const [slopeX, slopeY] = parameters;
  rows.push([1 / SLOPE_STANDARD_UNCERTAINTY, 0, 0, 0, 0], [0, 1 / SLOPE_STANDARD_UNCERTAINTY, 0, 0, 0]);
  residuals.push(-slopeX / SLOPE_STANDARD_UNCERTAINTY, -slopeY / SLOPE_STANDARD_UNCERTAINTY);
  return { rows, residuals, squaresPx2 };
}

/** Millimeters along the rule from its tick 0 at a point of the picture, and how many of them one pixel across the ticks is. */
function ruleCoordinate([slopeX, slopeY, logDepth, direction, zeroMm]: Parameters, { focalPx, centre }: Lens) {
  const { right, down, towards } = axesOf({ slopeX, slopeY });
  const depthMm = Math.exp(logDepth);
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  const along: Vector3 = [cosine * right[0] + sine * down[0], cosine * right[1] + sine * down[1], cosine * right[2] + sine * down[2]];
  return ({ xPx, yPx }: ImagePoint): { readonly alongMm: number; readonly mmPerPx: number } => {
    const ray: Vector3 = [(xPx - centre.xPx) / focalPx, (yPx - centre.yPx) / focalPx, 1];
    const factor = dot(towards, ray);
    const seenMm = (depthMm * dot(along, ray)) / factor;
    const byX = (depthMm * along[0] - seenMm * towards[0]) / (factor * focalPx);
    const byY = (depthMm * along[1] - seenMm * towards[1]) / (factor * focalPx);
    return { alongMm: seenMm - zeroMm, mmPerPx: Math.hypot(byX, byY) };
  };
}
