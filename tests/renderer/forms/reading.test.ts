import { describe, expect, test } from 'vitest';
import { decimalFrom, wholeOrNull } from '../../../src/renderer/forms/reading.ts';

describe('numbers as they are typed', () => {
  test('a point or a comma stands before the decimals, a true minus counts as one', () => {
    expect(decimalFrom(' 12.5 ')).toBe(12.5);
    expect(decimalFrom('12,5')).toBe(12.5);
    expect(decimalFrom('−3')).toBe(-3);
  });

  test('nothing, words and two commas are no number', () => {
    expect(['', ' ', 'six', '1,2,3'].map(decimalFrom)).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
  });

  test('a whole number may be left out, and is refused with decimals', () => {
    expect(wholeOrNull(' 7 ')).toBe(7);
    expect(wholeOrNull(' ')).toBeNull();
    expect(wholeOrNull('7.5')).toBeNaN();
  });
});
