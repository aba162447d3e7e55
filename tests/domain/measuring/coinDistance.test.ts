import { describe, expect, test } from 'vitest';
import { doubtAboutCoin } from '../../../src/domain/measuring/coinDistance.ts';
import { COIN_PHOTOS, coinTruth } from '../../support/coinTruth.ts';

describe.each(COIN_PHOTOS)('the diameter of a coin: $name', (photo) => {
  const { rim, marksOn, picture } = coinTruth(photo);
  const marks = marksOn(rim, 0.25, null);
  const unknownLens = { ...picture, facts: { focalLength35Mm: null } };

  test('the true one is believed, with and without a focal length, and so are the smallest and largest coin in its place', () => {
    // 16.25 mm: 1 cent (Council Regulation (EU) No 729/2014); 30.61 mm: half dollar (United States Mint).
    for (const diameterMm of [marks.diameterMm, 16.25, 30.61]) {
      expect(doubtAboutCoin({ ...marks, diameterMm }, picture)).toBeNull();
      expect(doubtAboutCoin({ ...marks, diameterMm }, unknownLens)).toBeNull();
    }
  });

  test('a meter and half a millimeter are asked about', () => {
    const far = doubtAboutCoin({ ...marks, diameterMm: 1000 }, picture);
    const near = doubtAboutCoin({ ...marks, diameterMm: 0.5 }, picture);
    expect(far).toMatchObject({ code: 'camera-height', heightMm: expect.any(Number) });
    expect(near).toMatchObject({ code: 'camera-height', heightMm: expect.any(Number) });
    expect(doubtAboutCoin({ ...marks, diameterMm: 1000 }, unknownLens)?.code).toBe('picture-length');
    expect(doubtAboutCoin({ ...marks, diameterMm: 0.5 }, unknownLens)?.code).toBe('picture-length');
  });
});
