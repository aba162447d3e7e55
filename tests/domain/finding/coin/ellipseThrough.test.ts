import { describe, expect, test } from 'vitest';
import { ellipseThrough } from '../../../../src/domain/finding/coin/ellipseThrough.ts';
import { directEllipse } from '../../../../src/domain/finding/coin/fitEllipse.ts';
import { type Ellipse, pointOn } from '../../../../src/domain/measuring/ellipse.ts';
import { randomSource } from '../../../support/random.ts';

const TRUTH: Ellipse = { centre: { xPx: 810.4, yPx: 455.2 }, semiMajorPx: 96, semiMinorPx: 81, angleRad: 1.1 };
const ROUGH: Ellipse = { centre: { xPx: 830, yPx: 440 }, semiMajorPx: 85, semiMinorPx: 85, angleRad: 0 };
const points = (count: number, noisePx: number) => {
  const random = randomSource(5);
  return Array.from({ length: count }, (_, index) => {
    const { xPx, yPx } = pointOn(TRUTH, (2 * Math.PI * index) / count);
    return { xPx: xPx + random.normal(noisePx), yPx: yPx + random.normal(noisePx) };
  });
};

describe('the quick ellipse through a few points', () => {
  test('is exact through exact points, wherever about its middle it is computed', () => {
    const found = ellipseThrough(6, ROUGH)(points(6, 0));
    expect(found?.centre.xPx).toBeCloseTo(TRUTH.centre.xPx, 6);
    expect(found?.semiMajorPx).toBeCloseTo(TRUTH.semiMajorPx, 6);
    expect(found?.semiMinorPx).toBeCloseTo(TRUTH.semiMinorPx, 6);
    expect(found?.angleRad).toBeCloseTo(TRUTH.angleRad, 6);
  });

  test('is near to the direct fit of Fitzgibbon, Pilu & Fisher 1999 where points scatter', () => {
    const noisy = points(60, 0.5);
    const found = ellipseThrough(6, ROUGH)(noisy);
    const direct = directEllipse(noisy);
    expect(Math.abs((found?.semiMajorPx ?? 0) - (direct?.semiMajorPx ?? 99))).toBeLessThan(0.1);
    expect(Math.abs((found?.centre.yPx ?? 0) - (direct?.centre.yPx ?? 99))).toBeLessThan(0.1);
  });

  test('gives the same answer when it is asked again after another', () => {
    const through = ellipseThrough(6, ROUGH);
    const first = through(points(6, 0));
    through(points(12, 2));
    expect(through(points(6, 0))).toEqual(first);
  });

  test('is none through too few points, points on a line, or a hyperbola', () => {
    const through = ellipseThrough(6, ROUGH);
    expect(through(points(5, 0))).toBeNull();
    expect(through([0, 1, 2, 3, 4, 5].map((step) => ({ xPx: 800 + 10 * step, yPx: 400 + 5 * step })))).toBeNull();
    const hyperbola = [-1, 0, 1].flatMap((t) =>
      [-1, 1].map((branch) => ({ xPx: 830 + 30 * branch * Math.cosh(t), yPx: 440 + 30 * Math.sinh(t) })),
    );
    expect(through(hyperbola)).toBeNull();
  });
});
