import { inverse, Matrix, QrDecomposition } from 'ml-matrix';

/** A linear least-squares fit of `observed` = `design` x `coefficients`. Units follow those of the observations and the design. */
export interface LinearFit {
  /** One per column of the design. */
  readonly coefficients: readonly number[];
  /** Square, one row and column per coefficient: (X'X)^-1. */
  readonly cofactors: readonly (readonly number[])[];
  /** s^2 (X'X)^-1. */
  readonly covariance: readonly (readonly number[])[];
  /** Positive square roots of the diagonal of `covariance`. */
  readonly standardErrors: readonly number[];
  /** s = sqrt(residual sum of squares / degrees of freedom); 0 when no degree of freedom is left. */
  readonly residualStandardDeviation: number;
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  /** 1 - RSS / sum (y - mean)^2: about the mean, so only meaningful when the design holds a constant. 1 if all observations agree. */
  readonly rSquared: number;
}

/**
 * Ordinary least squares by Householder QR of the design with its columns brought to similar lengths: the normal equations
 * would lose half of the digits on ill-conditioned designs (NIST StRD Longley and Pontius).
 *
 * @param design n rows of p numbers each, n >= p >= 1.
 * @param observed n numbers.
 * @throws RangeError when the shapes do not fit or the columns are linearly dependent: a mistake of the caller.
 */
export function leastSquares(design: readonly (readonly number[])[], observed: readonly number[]): LinearFit {
  const columns = design[0]?.length ?? 0;
  if (columns === 0 || design.length < columns || observed.length !== design.length || design.some((row) => row.length !== columns)) {
    throw new RangeError(`Expected n rows of p <= n numbers and n observations, got ${design.length} x ${columns} and ${observed.length}`);
  }
  const lengths = Array.from({ length: columns }, (_, column) => Math.hypot(...design.map((row) => row[column] ?? 0)));
  if (lengths.some((length) => !(length > 0))) throw new RangeError('Expected every column of the design to hold a number other than zero');
  // Powers of two scale without rounding.
  const scales = lengths.map((length) => 2 ** Math.round(Math.log2(length)));

  const scaled = new Matrix(design.map((row) => row.map((entry, column) => entry / (scales[column] ?? 1))));
  const qr = new QrDecomposition(scaled);
  if (!qr.isFullRank() || reciprocalCondition(qr.upperTriangularMatrix) < RANK_TOLERANCE) {
    throw new RangeError('Expected the columns of the design to be linearly independent');
  }
  const target = Matrix.columnVector([...observed]);
  const first = qr.solve(target);
  // One round of refinement on the residuals wins back digits that rounding in the first solution lost.
  const solution = Matrix.add(first, qr.solve(Matrix.sub(target, scaled.mmul(first))));
  const coefficients = solution.to1DArray().map((value, column) => value / (scales[column] ?? 1));
  const residuals = Matrix.sub(target, scaled.mmul(solution)).to1DArray();
  const residualSumOfSquares = residuals.reduce((sum, residual) => sum + residual * residual, 0);
  const degreesOfFreedom = design.length - columns;
  const variance = degreesOfFreedom > 0 ? residualSumOfSquares / degreesOfFreedom : 0;

  const upperInverse = inverse(qr.upperTriangularMatrix);
  const cofactors = upperInverse
    .mmul(upperInverse.transpose())
    .to2DArray()
    .map((row, i) => row.map((value, j) => value / ((scales[i] ?? 1) * (scales[j] ?? 1))));
  const covariance = cofactors.map((row) => row.map((value) => value * variance));

  const mean = observed.reduce((sum, value) => sum + value, 0) / observed.length;
  const total = observed.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    coefficients,
    cofactors,
    covariance,
    standardErrors: covariance.map((row, i) => Math.sqrt(row[i] ?? 0)),
    residualStandardDeviation: Math.sqrt(variance),
    residualSumOfSquares,
    degreesOfFreedom,
    rSquared: total > 0 ? 1 - residualSumOfSquares / total : 1,
  };
}

/**
 * Weighted least squares: rows scaled by the root of their weight, then as `leastSquares`. `rSquared` is about the mean of the
 * scaled observations and says nothing of the fit; `residualStandardDeviation` is that of an observation of weight 1.
 *
 * @param weights n numbers above zero, 1 / variance up to a common factor.
 * @throws RangeError as `leastSquares`, and when a weight is not above zero.
 */
export function weightedLeastSquares(
  design: readonly (readonly number[])[],
  observed: readonly number[],
  weights: readonly number[],
): LinearFit {
  if (weights.length !== observed.length || weights.some((weight) => !(weight > 0 && Number.isFinite(weight)))) {
    throw new RangeError(`Expected ${observed.length} weights above zero`);
  }
  const roots = weights.map(Math.sqrt);
  return leastSquares(
    design.map((row, i) => row.map((entry) => entry * (roots[i] ?? 0))),
    observed.map((value, i) => value * (roots[i] ?? 0)),
  );
}

/** Below this ratio of the diagonal of R a column is rounding noise of the others. Longley, the hardest set in use, stands at 1e-5. */
const RANK_TOLERANCE = 1e-13;

function reciprocalCondition(upper: Matrix): number {
  const diagonal = upper.diagonal().map(Math.abs);
  return Math.min(...diagonal) / Math.max(...diagonal);
}
