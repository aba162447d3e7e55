import { expect, test } from 'vitest';
import { putBackInWords, whatGoesToo } from '../../../src/renderer/removing/removalWords.ts';

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

test('what was put back says which photos stayed with another animal', () => {
  const photo = (code: string) => ({ originalName: 'a.jpg', code });
  expect(putBackInWords({ photosElsewhere: [] })).toBe('Put back as it was.');
  expect(putBackInWords({ photosElsewhere: [photo('K-2')] })).toBe('Put back, except 1 photo that was given to K-2 meanwhile.');
  expect(putBackInWords({ photosElsewhere: [photo('K-2'), photo('K-3'), photo('K-2')] })).toBe(
    'Put back, except 3 photos that were given to K-2 and K-3 meanwhile.',
  );
});
