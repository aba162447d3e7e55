import { leastSquares } from '../../numerics/leastSquares.ts';

/** Residuals that should vanish, each in units of its standard uncertainty, of parameters of which the last is the one wanted. */
export interface JointModel {
  /** Null where the parameters make no sense. */
  readonly residuals: (parameters: readonly number[]) => readonly number[] | null;
  readonly start: readonly number[];
}

export interface JointFit {
  /** The last parameter. */
  readonly value: number;
  /** Of it, if the residuals scatter as they should. */
  readonly standardUncertainty: number;
  /** Sum of the squared residuals over the degrees of freedom: 1 if they scatter as they should. */
  readonly excess: number;
  /** By how much the value changes when the residuals change by these. */
  readonly answerTo: (residuals: readonly number[]) => number;
}

const ROUNDS = 8;
const CONVERGED = 1e-9;
const STEP = 1e-5;

/**
 * All parameters together by Gauss-Newton with central differences. Everything is of order one: coordinates count in half
 * diagonals of the picture.
 *
 * @returns null when the residuals do not determine the parameters.
 */
export function fitJointly({ residuals, start }: JointModel): JointFit | null {
  let parameters = start;
  for (let round = 0; round < ROUNDS; round += 1) {
    const here = linearized(residuals, parameters);
    const fit = here && solved(here);
    if (!fit) return null;
    parameters = parameters.map((value, index) => value + (fit.coefficients[index] ?? 0));
    if (Math.hypot(...fit.coefficients) < CONVERGED) break;
  }
  const here = linearized(residuals, parameters);
  const value = parameters.at(-1);
  if (!here || value === undefined || !Number.isFinite(value)) return null;
  const last = parameters.length - 1;
  // Unit residuals in place of those found: the fit's own scale is their scatter, which is told apart.
  const gain = gainOf(here.rows, last);
  if (!gain) return null;
  const freedom = Math.max(1, here.negative.length - parameters.length);
  return {
    value,
    standardUncertainty: Math.hypot(...gain),
    excess: here.negative.reduce((sum, residual) => sum + residual * residual, 0) / freedom,
    answerTo: (change) => -gain.reduce((sum, factor, index) => sum + factor * (change[index] ?? 0), 0),
  };
}

interface Linearized {
  readonly rows: readonly (readonly number[])[];
  readonly negative: readonly number[];
}

function linearized(residuals: JointModel['residuals'], parameters: readonly number[]): Linearized | null {
  const here = residuals(parameters);
  const columns = parameters.map((value, index) => {
    const above = residuals(parameters.with(index, value + STEP));
    const below = residuals(parameters.with(index, value - STEP));
    return above && below && above.map((residual, row) => (residual - (below[row] ?? 0)) / (2 * STEP));
  });
  if (!here || columns.includes(null)) return null;
  const rows = here.map((_, row) => columns.map((column) => column?.[row] ?? 0));
  if (![...here, ...rows.flat()].every(Number.isFinite)) return null;
  return { rows, negative: here.map((residual) => -residual) };
}

function solved({ rows, negative }: Linearized) {
  try {
    return leastSquares(rows, negative);
  } catch (error) {
    // Too few points, or such as leave a parameter open.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/**
 * The row of the pseudo-inverse that gives one parameter: the part of its column that no other column can make, over that
 * part's square (Frisch and Waugh 1933, Econometrica 1:387).
 */
function gainOf(rows: Linearized['rows'], index: number): readonly number[] | null {
  const column = rows.map((row) => row[index] ?? 0);
  const others = solved({ rows: rows.map((row) => row.toSpliced(index, 1)), negative: column });
  if (!others) return null;
  const own = column.map(
    (value, row) => value - others.coefficients.reduce((sum, factor, at) => sum + factor * (rows[row]?.toSpliced(index, 1)[at] ?? 0), 0),
  );
  const square = own.reduce((sum, value) => sum + value * value, 0);
  return square > 0 ? own.map((value) => value / square) : null;
}
