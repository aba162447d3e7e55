import { expect, test } from 'vitest';
import { whatGoesToo } from '../../../src/renderer/removing/removalWords.ts';

const NOTHING = {
  specimens: 0,
  molts: 0,
  exuviae: 0,
  photos: 0,
  photosUnassigned: 0,
  readings: 0,
  determinations: 0,
  observations: 0,
  liveSigns: 0,
};

test('what goes with a removal is counted without the thing itself', () => {
  expect(whatGoesToo('specimen', { ...NOTHING, specimens: 1, molts: 3, exuviae: 1, determinations: 2, observations: 0 })).toBe(
    '3 molts, 1 skin and 2 determinations',
  );
  expect(whatGoesToo('photo', { ...NOTHING, photos: 1, readings: 2 })).toBe('2 readings');
  expect(whatGoesToo('molt', { ...NOTHING, molts: 1, photosUnassigned: 4 })).toBe('');
});
