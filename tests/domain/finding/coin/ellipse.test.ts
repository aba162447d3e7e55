import { describe, expect, test } from 'vitest';
import { directEllipse, geometricEllipse } from '../../../../src/domain/finding/coin/fitEllipse.ts';
import { type Ellipse, ellipseOf, matrixOf, pointOn } from '../../../../src/domain/measuring/ellipse.ts';
import { distanceFrom } from '../../../support/ellipseDistance.ts';
import { openCvEllipse } from '../../../support/opencv.ts';
import { randomSource } from '../../../support/random.ts';

/** Gander, Golub & Strebel 1994, BIT 34:558: the eight points of their example for ellipses. */
const GANDER = [
  [1, 7],
  [2, 6],
  [5, 8],
  [7, 7],
  [9, 5],
  [3, 7],
  [6, 2],
  [8, 4],
].map(([xPx = 0, yPx = 0]) => ({ xPx, yPx }));

const TURNED: Ellipse = { centre: { xPx: 500, yPx: 400 }, semiMajorPx: 120, semiMinorPx: 80, angleRad: 0.4 };

function around(ellipse: Ellipse, count: number) {
  return Array.from({ length: count }, (_, index) => pointOn(ellipse, (2 * Math.PI * index) / count));
}

describe('an ellipse', () => {
  test('survives the way through its matrix', () => {
    const [a, b, d, , c, e, , , f] = matrixOf(TURNED);
    const back = ellipseOf([a, 2 * b, c, 2 * d, 2 * e, f]);
    expect(back?.centre.xPx).toBeCloseTo(500, 9);
    expect(back?.centre.yPx).toBeCloseTo(400, 9);
    expect(back?.semiMajorPx).toBeCloseTo(120, 9);
    expect(back?.semiMinorPx).toBeCloseTo(80, 9);
    expect(back?.angleRad).toBeCloseTo(0.4, 12);
  });

  test('is not seen in a hyperbola', () => {
    expect(ellipseOf([1, 0, -1, 0, 0, -1])).toBeNull();
  });

  test.each([0.3, 2, 4, 5.5])('a point beyond it at eccentric angle %f is as far as it was moved', (angle) => {
    const foot = pointOn(TURNED, angle);
    const outer = pointOn({ ...TURNED, semiMajorPx: TURNED.semiMajorPx * 1.0001, semiMinorPx: TURNED.semiMinorPx * 1.0001 }, angle);
    const moved = Math.hypot(outer.xPx - foot.xPx, outer.yPx - foot.yPx);
    const distance = distanceFrom(TURNED, outer);
    expect(distance).toBeGreaterThan(0);
    expect(distance).toBeLessThanOrEqual(moved);
    expect(distanceFrom(TURNED, foot)).toBeCloseTo(0, 9);
    expect(distanceFrom(TURNED, TURNED.centre)).toBeCloseTo(-80, 9);
  });
});

describe('the direct fit (Halir & Flusser 1998)', () => {
  test('finds the ellipse its points lie on exactly', () => {
    const found = directEllipse(around(TURNED, 12));
    expect(found?.semiMajorPx).toBeCloseTo(120, 7);
    expect(found?.semiMinorPx).toBeCloseTo(80, 7);
    expect(found?.angleRad).toBeCloseTo(0.4, 9);
  });

  test('gives the published data the values of an independent computation', () => {
    // Recomputed apart from this program with the method of the paper; the axes by hand from its coefficients.
    const found = directEllipse(GANDER);
    expect(found?.centre.xPx).toBeCloseTo(5.06388, 4);
    expect(found?.centre.yPx).toBeCloseTo(5.06975, 4);
    expect(found?.semiMajorPx).toBeCloseTo(3.77566, 4);
    expect(found?.semiMinorPx).toBeCloseTo(2.64233, 4);
  });

  test('agrees with OpenCV fitEllipseDirect on noisy points', async () => {
    const reference = await openCvEllipse();
    const random = randomSource(5);
    const noisy = around(TURNED, 60).map(({ xPx, yPx }) => ({ xPx: xPx + random.normal(0.1), yPx: yPx + random.normal(0.1) }));
    const theirs = reference(noisy);
    const ours = directEllipse(noisy);
    expect(Math.abs((ours?.centre.xPx ?? 0) - theirs.centre.xPx)).toBeLessThan(0.01);
    expect(Math.abs((ours?.centre.yPx ?? 0) - theirs.centre.yPx)).toBeLessThan(0.01);
    expect(Math.abs((ours?.semiMajorPx ?? 0) - theirs.semiMajorPx)).toBeLessThan(0.01);
    expect(Math.abs((ours?.semiMinorPx ?? 0) - theirs.semiMinorPx)).toBeLessThan(0.01);
  });

  test('sees none in points on a line, nor in four', () => {
    expect(directEllipse([0, 1, 2, 3, 4, 5].map((x) => ({ xPx: x, yPx: 2 * x })))).toBeNull();
    expect(directEllipse(GANDER.slice(0, 4))).toBeNull();
  });
});

describe('the geometric fit', () => {
  test('reaches the values of Gander, Golub & Strebel 1994', () => {
    const start = directEllipse(GANDER);
    const fit = start && geometricEllipse(GANDER, start);
    expect(fit?.ellipse.centre.xPx).toBeCloseTo(2.6996, 4);
    expect(fit?.ellipse.centre.yPx).toBeCloseTo(3.816, 4);
    expect(fit?.ellipse.semiMajorPx).toBeCloseTo(6.5187, 4);
    expect(fit?.ellipse.semiMinorPx).toBeCloseTo(3.0319, 4);
    expect(fit?.ellipse.angleRad).toBeCloseTo(0.3596, 4);
    expect((fit?.residualPx ?? 0) ** 2 * 3).toBeCloseTo(1.373306, 5);
  });

  test('tells how far noise moves its numbers, as repeated simulation does', () => {
    const random = randomSource(11);
    const exact = around(TURNED, 40);
    const fits = Array.from({ length: 300 }, () => {
      const noisy = exact.map(({ xPx, yPx }) => ({ xPx: xPx + random.normal(0.3), yPx: yPx + random.normal(0.3) }));
      const fit = geometricEllipse(noisy, TURNED);
      if (!fit) throw new Error('The fit was lost');
      return fit;
    });
    const scatter = (of: (ellipse: Ellipse) => number, truth: number) =>
      Math.sqrt(fits.reduce((sum, { ellipse }) => sum + (of(ellipse) - truth) ** 2, 0) / fits.length);
    const predicted = (index: number) => 0.3 * Math.sqrt(fits[0]?.cofactor[index]?.[index] ?? 0);
    expect(scatter((ellipse) => ellipse.centre.xPx, 500) / predicted(0)).toBeCloseTo(1, 0);
    expect(scatter((ellipse) => ellipse.semiMajorPx, 120) / predicted(2)).toBeCloseTo(1, 0);
    expect(scatter((ellipse) => ellipse.semiMinorPx, 80) / predicted(3)).toBeCloseTo(1, 0);
    expect(scatter((ellipse) => ellipse.angleRad, 0.4) / predicted(4)).toBeCloseTo(1, 0);
  });
});
