import { describe, expect, test } from 'vitest';
import { type Generator, normalDeviate, seededGenerator } from '../../../src/domain/numerics/generator.ts';
import { propagateDistributions, symmetricInterval } from '../../../src/domain/numerics/monteCarlo.ts';

const DRAWS = 200_000;

/** Rectangular with the given standard deviation. */
function rectangular(draw: Generator, deviation: number): number {
  return Math.sqrt(3) * deviation * (2 * draw() - 1);
}

describe('the additive models of JCGM 101:2008, 9.2', () => {
  // 9.2.2: u(y) = 2.0, interval -3.92 to 3.92.
  test('four normal inputs', () => {
    const sum = (draw: Generator) => normalDeviate(draw) + normalDeviate(draw) + normalDeviate(draw) + normalDeviate(draw);
    const found = propagateDistributions(sum, DRAWS, seededGenerator(1));
    expect(found.standardDeviation).toBeCloseTo(2, 1);
    const [low, high] = symmetricInterval(found, 0.95);
    expect(Math.abs(low + 3.92)).toBeLessThan(0.04);
    expect(Math.abs(high - 3.92)).toBeLessThan(0.04);
  });

  // 9.2.3: u(y) = 2.0, interval -3.88 to 3.88: narrower than the normal one.
  test('four rectangular inputs', () => {
    const sum = (draw: Generator) => rectangular(draw, 1) + rectangular(draw, 1) + rectangular(draw, 1) + rectangular(draw, 1);
    const found = propagateDistributions(sum, DRAWS, seededGenerator(2));
    expect(found.standardDeviation).toBeCloseTo(2, 1);
    const [low, high] = symmetricInterval(found, 0.95);
    expect(Math.abs(low + 3.88)).toBeLessThan(0.035);
    expect(Math.abs(high - 3.88)).toBeLessThan(0.035);
  });

  // 9.2.4: one input ten times as large; u(y) = 10.1, interval -17.0 to 17.0, where the first order says 19.8.
  test('one rectangular input dominates', () => {
    const sum = (draw: Generator) => rectangular(draw, 1) + rectangular(draw, 1) + rectangular(draw, 1) + rectangular(draw, 10);
    const found = propagateDistributions(sum, DRAWS, seededGenerator(3));
    expect(found.standardDeviation).toBeCloseTo(10.1, 0);
    expect(Math.abs(symmetricInterval(found, 0.95)[1] - 17)).toBeLessThan(0.1);
  });
});

test('the same seed gives the same numbers, another others', () => {
  const first = Array.from({ length: 5 }, seededGenerator(7));
  expect(Array.from({ length: 5 }, seededGenerator(7))).toEqual(first);
  expect(Array.from({ length: 5 }, seededGenerator(8))).not.toEqual(first);
});

test('draws without a value are counted; more than one in a hundred, or too few of the rest, are refused', () => {
  const without = (share: number) => propagateDistributions((draw) => (draw() < share ? null : 1), 10_000, seededGenerator(4));
  const few = without(0.005);
  expect(few.failed).toBeGreaterThan(25);
  expect(few.failed).toBeLessThan(75);
  expect(few.sorted).toHaveLength(10_000 - few.failed);
  expect(() => without(0.02)).toThrow(/of 10000 gave none/);
  expect(() => propagateDistributions(() => null, 10, seededGenerator(5))).toThrow(RangeError);
  expect(() => propagateDistributions(() => 1, 1, seededGenerator(5))).toThrow(RangeError);
});
