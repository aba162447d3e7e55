import { describe, expect, it } from 'vitest';
import { canShow, photosOf } from '../../../src/domain/sexing/pins.ts';

describe('what a photo can show of a skin (common practice, no source)', () => {
  it('from above is neither the strip nor its fusillae', () => {
    for (const question of ['receptaclesSeen', 'uterusExternusSeen', 'fusillaeOutsideSeen', 'fourBookLungsFound'] as const)
      expect(canShow(question, 'dorsal')).toBe(false);
    expect(canShow('skinMatchesAnimal', 'dorsal')).toBe(true);
  });

  it('from inside is the strip, from outside are the fusillae', () => {
    expect(canShow('receptaclesSeen', 'abdomen-inside')).toBe(true);
    expect(canShow('receptaclesSeen', 'abdomen-outside')).toBe(false);
    expect(canShow('fusillaeOutsideSeen', 'abdomen-outside')).toBe(true);
    expect(canShow('fusillaeOutsideSeen', 'abdomen-inside')).toBe(false);
  });

  it('may be anything in a detail', () => {
    expect(canShow('receptaclesSeen', 'detail')).toBe(true);
    expect(canShow('fusillaeOutsideSeen', 'other')).toBe(true);
  });
});

it('a photo is evidence of what it is pinned to, and of anything while it is pinned to nothing', () => {
  const pin = (question: 'skinMatchesAnimal' | 'palpalBulbsOnAnimal', photoId: string) => ({ question, photoId, mark: null });
  const reading = { evidencePhotoIds: ['a', 'b', 'c'], pins: [pin('skinMatchesAnimal', 'a'), pin('palpalBulbsOnAnimal', 'b')] };
  expect(photosOf('palpalBulbsOnAnimal', reading)).toEqual(['b', 'c']);
});
