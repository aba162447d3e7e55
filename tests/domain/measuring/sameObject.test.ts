import { describe, expect, it } from 'vitest';
import { areOfOneCard, farthestCornerPx, middleOf } from '../../../src/domain/measuring/sameObject.ts';
import { uprightCard } from '../../support/uprightCard.ts';

describe('marks of one card', () => {
  const [first, second, third, fourth] = uprightCard(100, 100).corners;
  const displaced = uprightCard(100, 100, { corners: [{ xPx: 60, yPx: 40 }, { xPx: 1080, yPx: 90 }, third, fourth] });

  it('are known by lying about each other, however far a handle is from its corner', () => {
    expect(areOfOneCard(displaced, uprightCard(100, 100))).toBe(true);
    expect(areOfOneCard(uprightCard(100, 100, { corners: [third, fourth, first, second] }), displaced)).toBe(true);
    expect(farthestCornerPx(displaced.corners, uprightCard(100, 100).corners)).toBeCloseTo(Math.hypot(1080 - 956, 10), 9);
  });

  it('are not those of another card beside it, nor of another size', () => {
    expect(areOfOneCard(uprightCard(100, 100), uprightCard(1000, 100))).toBe(false);
    // Overlapping at a corner: two cards, one on the other.
    expect(areOfOneCard(uprightCard(100, 100), uprightCard(600, 400))).toBe(false);
    expect(areOfOneCard(uprightCard(100, 100), uprightCard(100, 100, { object: 'a6' }))).toBe(false);
  });

  it('have their middle between them', () => {
    expect(middleOf(uprightCard(100, 100))).toEqual({ xPx: 528, yPx: 370 });
  });
});
