/**
 * The law of propagation of uncertainty, JCGM 100:2008 ("GUM"), numerically as its 5.1.3 NOTE 2 allows: an input is moved
 * down and up by its standard uncertainty, and half of the change of the model is the contribution c u, sign included.
 */
export interface Excursion<State> {
  /** What the model takes, with this input one standard uncertainty below its estimate. */
  readonly below: State;
  /** The same, one standard uncertainty above. */
  readonly above: State;
}

/** c u of one input, in the unit of the model: signed, first order. */
export function contribution<State>(model: (state: State) => number, { below, above }: Excursion<State>): number {
  return (model(above) - model(below)) / 2;
}

/** f'' u^2 of one input, in the unit of the model: what the first order leaves out. */
export function curvature<State>(model: (state: State) => number, estimate: number, { below, above }: Excursion<State>): number {
  return model(above) + model(below) - 2 * estimate;
}

/**
 * Covariance of two results that share their inputs (GUM equations 13 and 16); of one result with itself, its variance.
 *
 * @param correlations r(i, j) of the inputs, square; left out when they are independent.
 */
export function covarianceOf(
  first: readonly number[],
  second: readonly number[],
  correlations?: readonly (readonly number[])[] | undefined,
): number {
  let sum = 0;
  for (let i = 0; i < first.length; i += 1) {
    const left = first[i] ?? 0;
    if (!correlations) sum += left * (second[i] ?? 0);
    else for (let j = 0; j < second.length; j += 1) sum += left * (second[j] ?? 0) * (correlations[i]?.[j] ?? 0);
  }
  return sum;
}

/**
 * Mean square deviation from the uncorrected estimate when second-order terms matter (GUM 5.1.2 NOTE): the first-order
 * variance, the variance of the quadratic terms of normal inputs, and the square of the shift of their mean. Mixed second
 * derivatives are left out; the inputs are independent.
 */
export function meanSquareDeviation(contributions: readonly number[], curvatures: readonly number[]): number {
  let first = 0;
  for (const value of contributions) first += value * value;
  let squares = 0;
  let shift = 0;
  for (const value of curvatures) {
    squares += value * value;
    shift += value / 2;
  }
  return first + squares / 2 + shift * shift;
}
