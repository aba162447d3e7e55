import { describe, expect, it } from 'vitest';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import { areOfOneCard, farthestCornerPx, middleOf } from '../../../src/domain/measuring/sameObject.ts';

function card(xPx: number, yPx: number, change: Partial<RectangleScale> = {}): RectangleScale {
  return {
    kind: 'rectangle',
    object: 'id-1',
    corners: [
      { xPx, yPx },
      { xPx: xPx + 856, yPx },
      { xPx: xPx + 856, yPx: yPx + 540 },
      { xPx, yPx: yPx + 540 },
    ],
    widthMm: 85.6,
    heightMm: 53.98,
    widthStandardUncertaintyMm: 0.075,
    heightStandardUncertaintyMm: 0.035,
    thicknessMm: 0.76,
    pointingPx: 1,
    ...change,
  };
}

describe('marks of one card', () => {
  const [first, second, third, fourth] = card(100, 100).corners;
  const displaced = card(100, 100, { corners: [{ xPx: 60, yPx: 40 }, { xPx: 1080, yPx: 90 }, third, fourth] });

  it('are known by lying about each other, however far a handle is from its corner', () => {
    expect(areOfOneCard(displaced, card(100, 100))).toBe(true);
    expect(areOfOneCard(card(100, 100, { corners: [third, fourth, first, second] }), displaced)).toBe(true);
    expect(farthestCornerPx(displaced.corners, card(100, 100).corners)).toBeCloseTo(Math.hypot(1080 - 956, 10), 9);
  });

  it('are not those of another card beside it, nor of another size', () => {
    expect(areOfOneCard(card(100, 100), card(1000, 100))).toBe(false);
    // Overlapping at a corner: two cards, one on the other.
    expect(areOfOneCard(card(100, 100), card(600, 400))).toBe(false);
    expect(areOfOneCard(card(100, 100), card(100, 100, { object: 'a6' }))).toBe(false);
  });

  it('have their middle between them', () => {
    expect(middleOf(card(100, 100))).toEqual({ xPx: 528, yPx: 370 });
  });
});
