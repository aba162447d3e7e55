import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Corners, checkCorners, orderCorners } from '../../../src/domain/measuring/corners.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';

function at(xPx: number, yPx: number): ImagePoint {
  return { xPx, yPx };
}

const UPRIGHT: Corners = [at(0, 0), at(86, 0), at(86, 54), at(0, 54)];
const CARD = { widthMm: 85.6, heightMm: 53.98 };

function codeOf(result: ReturnType<typeof checkCorners>): string {
  return result.ok ? 'ok' : result.failure.code;
}

describe('checking corners', () => {
  it('accepts a rectangle marked clockwise on the screen from any corner', () => {
    const [a, b, c, d] = UPRIGHT;
    for (const corners of [UPRIGHT, [b, c, d, a], [c, d, a, b], [d, a, b, c]] satisfies Corners[])
      expect(codeOf(checkCorners(corners))).toBe('ok');
  });

  it('tells a mirrored order, a crossed one, a dent and a line apart', () => {
    const [a, b, c, d] = UPRIGHT;
    expect(codeOf(checkCorners([a, d, c, b]))).toBe('corners-mirrored');
    expect(codeOf(checkCorners([a, c, b, d]))).toBe('corners-not-convex');
    expect(codeOf(checkCorners([a, b, at(40, 20), d]))).toBe('corners-not-convex');
    expect(codeOf(checkCorners([a, b, c, at(43, 27)]))).toBe('corners-collinear');
    expect(codeOf(checkCorners([a, at(20, 0), at(50, 0), at(90, 0)]))).toBe('corners-collinear');
    expect(codeOf(checkCorners([a, a, c, d]))).toBe('corners-collinear');
  });
});

describe('ordering rough handles', () => {
  it('gives the same corners whatever the order they were placed in', () => {
    const { see } = pinhole(FIXTURE_A);
    const corners: Corners = [see(0, 0), see(85.6, 0), see(85.6, 53.98), see(0, 53.98)];
    fc.assert(
      fc.property(fc.shuffledSubarray([...corners], { minLength: 4, maxLength: 4 }), ([a, b, c, d]) => {
        if (!a || !b || !c || !d) throw new Error('Expected four handles');
        expect(orderCorners([a, b, c, d], CARD)).toEqual({ ok: true, value: corners });
      }),
    );
  });

  it('lets the longer image side meet the longer side of the object, however the card lies', () => {
    for (const rollDeg of [0, 45, 100, 190, 280]) {
      const { see } = pinhole({ ...FIXTURE_A, rollDeg });
      const placed: Corners = [see(0, 53.98), see(85.6, 0), see(0, 0), see(85.6, 53.98)];
      const ordered = orderCorners(placed, CARD);
      const upright = orderCorners(placed, { widthMm: 53.98, heightMm: 85.6 });
      if (!ordered.ok || !upright.ok) throw new Error('Expected the handles to form a rectangle');
      expect(checkCorners(ordered.value).ok).toBe(true);
      const side = ([from, to]: Corners): number => Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
      expect(side(ordered.value)).toBeGreaterThan(side(upright.value));
    }
  });

  it('refuses handles one of which lies between the others', () => {
    const dented = orderCorners([at(0, 0), at(100, 0), at(50, 20), at(50, 90)], CARD);
    expect(codeOf(dented)).toBe('corners-not-convex');
  });
});
