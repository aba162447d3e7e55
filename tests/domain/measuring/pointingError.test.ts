import { describe, expect, test } from 'vitest';
import { pointOnEdgePx } from '../../../src/domain/measuring/edgeDefinition.ts';
import { coarseAimPx, knownPointing, pointingOf } from '../../../src/domain/measuring/pointingError.ts';

describe('how well one point is placed', () => {
  const by = (landmark: { pointingPx?: number; aimedPx?: number }) => pointingOf('carapace-front', landmark, 1.5);

  test('is what is stated of the hand, unless the photo was shown too small for that', () => {
    expect(by({})).toEqual(knownPointing(1.5));
    expect(by({ aimedPx: 1 })).toEqual(knownPointing(1.5));
    expect(by({ aimedPx: 4.3 })).toEqual(knownPointing(4.3));
  });

  test('is that of the edge where it went to one, and of what that leaves of the hand, however coarse', () => {
    expect(by({ pointingPx: 0.5 })).toEqual(knownPointing(pointOnEdgePx(0.5, 1.5)));
    expect(by({ pointingPx: 0.5, aimedPx: 4.3 })).toEqual(knownPointing(pointOnEdgePx(0.5, 4.3)));
    expect(by({ pointingPx: 0.5, aimedPx: 1 })).toEqual(by({ pointingPx: 0.5 }));
  });

  test('is half a pixel of the screen where that is more than stated', () => {
    // 8 megapixels and more, shown whole: one pixel of the screen is 1 / 0.116 of the photo's.
    expect(coarseAimPx(0.116, 1.5)).toBeCloseTo(4.31, 2);
    expect(coarseAimPx(0.5, 1.5)).toBeNull();
    expect(coarseAimPx(1, 0.2)).toBe(0.5);
  });
});
