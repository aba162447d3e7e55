/** A pivot below this share of its diagonal says that the equations do not determine the unknowns. */
const LEAST_PIVOT = 1e-13;

/**
 * Solves A x = b for a symmetric positive definite A of a few rows by elimination without exchange, in place: for inner loops that
 * must not allocate.
 *
 * @param matrix A, row by row, `size` x `size`; spoiled.
 * @param right b; becomes x.
 * @returns `right`, or null when A is not positive definite.
 */
export function solveSymmetric(matrix: Float64Array, right: Float64Array, size: number): Float64Array | null {
  for (let pivot = 0; pivot < size; pivot += 1) {
    const diagonal = matrix[pivot * size + pivot] ?? 0;
    if (!(diagonal > 0)) return null;
    for (let row = pivot + 1; row < size; row += 1) {
      const factor = (matrix[row * size + pivot] ?? 0) / diagonal;
      const before = matrix[row * size + row] ?? 0;
      for (let column = pivot + 1; column < size; column += 1) {
        const at = row * size + column;
        matrix[at] = (matrix[at] ?? 0) - factor * (matrix[pivot * size + column] ?? 0);
      }
      if (!((matrix[row * size + row] ?? 0) > LEAST_PIVOT * before)) return null;
      right[row] = (right[row] ?? 0) - factor * (right[pivot] ?? 0);
    }
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = right[row] ?? 0;
    for (let column = row + 1; column < size; column += 1) sum -= (matrix[row * size + column] ?? 0) * (right[column] ?? 0);
    right[row] = sum / (matrix[row * size + row] ?? 1);
  }
  return right;
}
