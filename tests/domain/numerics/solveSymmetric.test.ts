import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { solveSymmetric } from '../../../src/domain/numerics/solveSymmetric.ts';

describe('symmetric equations solved in place', () => {
  it('have the solution of ml-matrix', () => {
    const half = new Matrix([
      [2, 0.3, -1],
      [0.1, 1.5, 0.4],
      [0.7, -0.2, 1.1],
      [1, 1, 1],
    ]);
    const matrix = half.transpose().mmul(half);
    const expected = solve(matrix, Matrix.columnVector([1, -2, 0.5])).to1DArray();
    const found = solveSymmetric(Float64Array.from(matrix.to1DArray()), Float64Array.of(1, -2, 0.5), 3);
    expected.forEach((value, index) => {
      expect(found?.[index]).toBeCloseTo(value, 12);
    });
  });

  it('have none when the matrix is singular or not positive', () => {
    expect(solveSymmetric(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 2), 2)).toBeNull();
    expect(solveSymmetric(Float64Array.of(-1, 0, 0, 1), Float64Array.of(1, 2), 2)).toBeNull();
  });
});
