import type { MeasuredStep } from '../measuredStep.ts';

/** A row of sizes as a course is fitted to it. */
export interface Course {
  readonly firstStep: number;
  /** Instars since the first size. */
  readonly since: readonly number[];
  /** (u(L) / L)^2. */
  readonly readings: readonly number[];
  readonly logs: readonly number[];
  readonly degree: 1 | 2;
  readonly degreesOfFreedom: number;
}

/** @param sizes in rising order of step. */
export function courseOf(sizes: readonly MeasuredStep[], degree: 1 | 2): Course {
  const firstStep = sizes[0]?.step ?? 0;
  return {
    firstStep,
    since: sizes.map(({ step }) => step - firstStep),
    readings: sizes.map(({ lengthMm, uncertaintyMm }) => (uncertaintyMm / lengthMm) ** 2),
    logs: sizes.map(({ lengthMm }) => Math.log(lengthMm)),
    degree,
    degreesOfFreedom: sizes.length - 1 - degree,
  };
}

export function powersOf(d: number, degree: 1 | 2): number[] {
  return degree === 1 ? [1, d] : [1, d, d * d];
}

/** A scatter of 1e-6, far below any reading: less counts as none. */
const LEAST_VARIANCE = 1e-12;

/**
 * s^2 of single ln r beyond the readings: where the weighted sum of squares, which falls with it, equals its expectation n - p; 0 where
 * the readings explain it all (Paule RC, Mandel J 1982, J. Res. Natl. Bur. Stand. 87:377-385; from memory). Bisected on a logarithmic scale.
 */
export function scatterVarianceOf(course: Course): number {
  const exceeds = (variance: number) => weightedSum(course, variance) > course.degreesOfFreedom;
  if (!exceeds(LEAST_VARIANCE)) return 0;
  let low = Math.log(LEAST_VARIANCE);
  let high = 0;
  while (exceeds(Math.exp(high))) high += 1;
  for (let halving = 0; halving < 40; halving += 1) {
    const middle = (low + high) / 2;
    if (exceeds(Math.exp(middle))) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

/**
 * The weighted residual sum of squares, from the steps between neighbors alone: these hold all but the first size, and as only
 * neighbors share a reading, a few sums take the place of matrices while s^2 is looked for.
 */
function weightedSum({ since, readings, logs, degree }: Course, scatterVariance: number): number {
  let [root, rise, along, square] = [1, 0, 0, 0];
  const sums = { rr: 0, ra: 0, rs: 0, aa: 0, as: 0, ss: 0 };
  for (let i = 1; i < since.length; i += 1) {
    const [d, e, u] = [since[i] ?? 0, since[i - 1] ?? 0, readings[i - 1] ?? 0];
    const shared = i === 1 ? 0 : -u / root;
    root = Math.sqrt(scatterVariance * (d - e) + u + (readings[i] ?? 0) - shared ** 2);
    rise = ((logs[i] ?? 0) - (logs[i - 1] ?? 0) - shared * rise) / root;
    along = (d - e - shared * along) / root;
    square = (d * d - e * e - shared * square) / root;
    sums.rr += rise ** 2;
    sums.ra += rise * along;
    sums.rs += rise * square;
    sums.aa += along ** 2;
    sums.as += along * square;
    sums.ss += square ** 2;
  }
  const line = sums.rr - sums.ra ** 2 / sums.aa;
  if (degree === 1) return line;
  return line - (sums.rs - (sums.ra * sums.as) / sums.aa) ** 2 / (sums.ss - sums.as ** 2 / sums.aa);
}

/**
 * Variance of ln r about a course with the readings' part left in: the mean of (ln r - expected)^2 per instar, over n - p. Steps between
 * badly read skins count less; with readings all alike it is the residual variance of the single ln r.
 */
export function scatterLeftIn(course: Course, coefficients: readonly number[], scatterVariance: number): number {
  const { since, readings, logs, degree, degreesOfFreedom } = course;
  const expected = since.map((d) => powersOf(d, degree).reduce((sum, power, i) => sum + power * (coefficients[i] ?? 0), 0));
  let [weight, weighted] = [0, 0];
  for (let i = 1; i < since.length; i += 1) {
    const d = (since[i] ?? 0) - (since[i - 1] ?? 0);
    const apart = (logs[i] ?? 0) - (logs[i - 1] ?? 0) - ((expected[i] ?? 0) - (expected[i - 1] ?? 0));
    const here = 1 / (LEAST_VARIANCE + scatterVariance + ((readings[i] ?? 0) + (readings[i - 1] ?? 0)) / d);
    weight += here;
    weighted += (here * apart ** 2) / d;
  }
  return ((weighted / weight) * (since.length - 1)) / degreesOfFreedom;
}
