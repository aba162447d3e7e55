import { leastSquares } from '../numerics/leastSquares.ts';
import { medianOf } from '../numerics/median.ts';

/** Where equally spaced marks on a straight line in space stand on its picture: u = (a t + b) / (c t + 1). */
export interface ProjectiveLine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

export interface ProjectiveLineFit extends ProjectiveLine {
  /** Of a, b, c. */
  readonly covariance: readonly (readonly number[])[];
  readonly residualPx: number;
  /** For each observation: whether it took part. */
  readonly used: readonly boolean[];
}

export function placeOn({ a, b, c }: ProjectiveLine, t: number): number {
  return (a * t + b) / (c * t + 1);
}

/** The mark seen at a place: the inverse of `placeOn`. */
export function markAt({ a, b, c }: ProjectiveLine, u: number): number {
  return (u - b) / (a - c * u);
}

/** Pixels for one unit of the mark's number. */
export function spacingAt({ a, b, c }: ProjectiveLine, t: number): number {
  return (a - b * c) / (c * t + 1) ** 2;
}

const ROUNDS = 6;
/** Three scaled median deviations: beyond lies 1 in 400 of normal errors. */
const OUTLIER_DEVIATIONS = 3;
const MAD_FACTOR = 1.4826;

/**
 * Fits the map of a line of equally spaced marks: a start that less than half of the marks can't spoil, then Gauss-Newton on the
 * distances in the picture (the one-dimensional case of Hartley & Zisserman, Multiple View Geometry, algorithm 4.2), marks
 * beyond three scaled median deviations left out.
 *
 * @param leastScalePx marks are never outliers within three of these.
 * @returns null with fewer than four marks or when they do not determine the map.
 */
export function fitProjectiveLine(numbers: readonly number[], places: readonly number[], leastScalePx = 0.05): ProjectiveLineFit | null {
  if (numbers.length !== places.length)
    throw new RangeError(`Expected as many places as numbers, got ${places.length} and ${numbers.length}`);
  if (new Set(numbers).size < 4) return null;
  // Centered and scaled, so that the linear start is well conditioned (Hartley 1997, IEEE PAMI 19:580).
  const middle = (Math.max(...numbers) + Math.min(...numbers)) / 2;
  const half = (Math.max(...numbers) - Math.min(...numbers)) / 2;
  const center = places.reduce((sum, place) => sum + place, 0) / places.length;
  const spread = Math.max(...places.map((place) => Math.abs(place - center)));
  const t = numbers.map((number) => (number - middle) / half);
  const u = places.map((place) => (place - center) / spread);
  const first = leastMedian(t, u);
  if (!first) return null;
  let used = withinReach(first, t, u, leastScalePx / spread);
  let fit = refine(first, t, u, used);
  for (let round = 0; round < ROUNDS && fit; round += 1) {
    const kept = withinReach(fit.line, t, u, leastScalePx / spread);
    if (kept.every((keep, index) => keep === used[index])) break;
    used = kept;
    fit = refine(fit.line, t, u, used);
  }
  if (!fit) return null;
  return unscale(fit, { middle, half, center, spread }, used);
}

interface ScaledFit {
  readonly line: ProjectiveLine;
  readonly covariance: readonly (readonly number[])[];
  readonly residual: number;
}

function withinReach(line: ProjectiveLine, t: readonly number[], u: readonly number[], leastScale: number): readonly boolean[] {
  const deviations = t.map((number, index) => Math.abs((u[index] ?? 0) - placeOn(line, number)));
  const limit = OUTLIER_DEVIATIONS * Math.max(leastScale, MAD_FACTOR * medianOf(deviations));
  return deviations.map((deviation) => deviation <= limit);
}

/** Marks that triples are drawn from, evenly along the line. */
const ANCHORS = 9;

/** Of the maps through three marks each the one with the least median deviation (Rousseeuw 1984, JASA 79:871), without chance. */
function leastMedian(t: readonly number[], u: readonly number[]): ProjectiveLine | null {
  const order = t.map((_, index) => index).toSorted((one, other) => (t[one] ?? 0) - (t[other] ?? 0));
  const count = Math.min(ANCHORS, order.length);
  const anchors = Array.from({ length: count }, (_, index) => order[Math.round((index * (order.length - 1)) / (count - 1))] ?? 0);
  let best: { line: ProjectiveLine; median: number } | null = null;
  for (const [first, one] of anchors.entries()) {
    for (const [second, two] of anchors.entries()) {
      for (const three of anchors.slice(second + 1)) {
        if (second <= first) continue;
        const line = through(t, u, [one, two, three]);
        if (!line) continue;
        const median = medianOf(t.map((number, index) => Math.abs((u[index] ?? 0) - placeOn(line, number))));
        if (Number.isFinite(median) && !(best && best.median <= median)) best = { line, median };
      }
    }
  }
  return best?.line ?? null;
}

/** The map through three marks, from a t + b - c t u = u. */
function through(t: readonly number[], u: readonly number[], marks: readonly number[]): ProjectiveLine | null {
  const rows = marks.map((mark) => [t[mark] ?? 0, 1, -(t[mark] ?? 0) * (u[mark] ?? 0)]);
  try {
    const [a = 0, b = 0, c = 0] = leastSquares(
      rows,
      marks.map((mark) => u[mark] ?? 0),
    ).coefficients;
    return { a, b, c };
  } catch (error) {
    // Three marks of which two coincide determine no map.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function refine(from: ProjectiveLine, t: readonly number[], u: readonly number[], used: readonly boolean[]): ScaledFit | null {
  let line = from;
  for (let round = 0; round < 12; round += 1) {
    const rows: number[][] = [];
    const residuals: number[] = [];
    t.forEach((number, index) => {
      if (!used[index]) return;
      const weight = line.c * number + 1;
      const place = placeOn(line, number);
      rows.push([number / weight, 1 / weight, (-number * place) / weight]);
      residuals.push((u[index] ?? 0) - place);
    });
    if (rows.length < 3 || rows.some((row) => !row.every(Number.isFinite))) return null;
    const step = leastSquares(rows, residuals);
    const [da = 0, db = 0, dc = 0] = step.coefficients;
    line = { a: line.a + da, b: line.b + db, c: line.c + dc };
    if (Math.hypot(da, db, dc) < 1e-13 || round === 11) {
      return { line, covariance: step.covariance, residual: Math.sqrt(step.residualSumOfSquares / rows.length) };
    }
  }
  return null;
}

/** Back to the caller's numbers and pixels; the covariance by the derivatives of the change of variables. */
function unscale(
  { line, covariance, residual }: ScaledFit,
  { middle, half, center, spread }: { middle: number; half: number; center: number; spread: number },
  used: readonly boolean[],
): ProjectiveLineFit {
  const change = ([a, b, c]: readonly [number, number, number]): readonly [number, number, number] => {
    const last = 1 - (c * middle) / half;
    return [
      ((spread * a) / half + (center * c) / half) / last,
      (spread * (b - (a * middle) / half) + center * last) / last,
      c / half / last,
    ];
  };
  const at: readonly [number, number, number] = [line.a, line.b, line.c];
  const [a, b, c] = change(at);
  const columns = [0, 1, 2].map((index) => {
    const step = 1e-6;
    const above = change(bump(at, index, step));
    const below = change(bump(at, index, -step));
    return [0, 1, 2].map((row) => ((above[row as 0 | 1 | 2] ?? 0) - (below[row as 0 | 1 | 2] ?? 0)) / (2 * step));
  });
  const unscaled = [0, 1, 2].map((row) =>
    [0, 1, 2].map((column) => {
      let sum = 0;
      for (let i = 0; i < 3; i += 1)
        for (let j = 0; j < 3; j += 1) sum += (columns[i]?.[row] ?? 0) * (covariance[i]?.[j] ?? 0) * (columns[j]?.[column] ?? 0);
      return sum;
    }),
  );
  return { a, b, c, covariance: unscaled, residualPx: residual * spread, used };
}

function bump([a, b, c]: readonly [number, number, number], index: number, by: number): readonly [number, number, number] {
  return [index === 0 ? a + by : a, index === 1 ? b + by : b, index === 2 ? c + by : c];
}
