import { describe, expect, test } from 'vitest';
import type { RectangleScale } from '../../../../src/domain/measuring/calibration.ts';
import { roundedOutlineOf } from '../../../../src/renderer/pages/bench/picture/outline.ts';

/** An ID-1 card seen from straight above at 10 pixels to the millimeter. */
const card: RectangleScale = {
  kind: 'rectangle',
  object: 'id-1',
  corners: [
    { xPx: 0, yPx: 0 },
    { xPx: 856, yPx: 0 },
    { xPx: 856, yPx: 539.8 },
    { xPx: 0, yPx: 539.8 },
  ],
  widthMm: 85.6,
  heightMm: 53.98,
  widthStandardUncertaintyMm: 0.075,
  heightStandardUncertaintyMm: 0.035,
  thicknessMm: 0.76,
  pointingPx: 1.5,
};

describe('the outline of a rounded card', () => {
  test('keeps (sqrt 2 - 1) radii, 1.317 mm, away from the constructed corners (ISO/IEC 7810: radius 3.18 mm)', () => {
    const outline = roundedOutlineOf(card) ?? [];
    for (const corner of card.corners) {
      const nearestMm = Math.min(...outline.map(({ xPx, yPx }) => Math.hypot(xPx - corner.xPx, yPx - corner.yPx))) / 10;
      expect(nearestMm).toBeCloseTo((Math.SQRT2 - 1) * 3.18, 6);
    }
  });

  test('touches every edge and leaves none', () => {
    const outline = roundedOutlineOf(card) ?? [];
    expect(Math.min(...outline.map(({ xPx }) => xPx))).toBeCloseTo(0, 6);
    expect(Math.max(...outline.map(({ xPx }) => xPx))).toBeCloseTo(856, 6);
    expect(Math.min(...outline.map(({ yPx }) => yPx))).toBeCloseTo(0, 6);
    expect(Math.max(...outline.map(({ yPx }) => yPx))).toBeCloseTo(539.8, 6);
  });

  test('is not drawn for sharp corners', () => {
    expect(roundedOutlineOf({ ...card, object: 'a5' })).toBeNull();
  });
});
