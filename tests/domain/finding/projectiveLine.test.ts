import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitProjectiveLine, markAt, placeOn, spacingAt } from '../../../src/domain/finding/projectiveLine.ts';
import { randomSource, standardDeviationOf } from '../../support/random.ts';

/** A rule tilted 20 degrees, its middle 300 mm away, seen with f = 3000 px: ticks 0, 10 ... 100 mm, by the pinhole equation. */
const NUMBERS = Array.from({ length: 11 }, (_, index) => 10 * index);
const TILTED = NUMBERS.map((mm) => {
  const along = mm - 50;
  return (3000 * along * Math.cos(Math.PI / 9)) / (300 + along * Math.sin(Math.PI / 9));
});

describe('the map of equally spaced marks', () => {
  it('reproduces a tilted rule exactly', () => {
    // Worked by hand from the pinhole equation; a straight-line fit leaves 9.50 px.
    expect(TILTED.map((place) => Number(place.toFixed(4)))).toEqual([
      -498.2481, -393.8371, -291.891, -192.3238, -95.0529, 0, 92.91, 183.7488, 272.5848, 359.4836, 444.5079,
    ]);
    const fit = fitProjectiveLine(NUMBERS, TILTED);
    if (!fit) throw new Error('Expected a fit');
    expect(fit.a).toBeCloseTo(9.964962526, 7);
    expect(fit.b).toBeCloseTo(-498.248126323, 6);
    expect(fit.c).toBeCloseTo(0.00120898325, 10);
    expect(fit.residualPx).toBeLessThan(1e-9);
    expect(spacingAt(fit, 5)).toBeGreaterThan(10.3);
    expect(markAt(fit, placeOn(fit, 37.2))).toBeCloseTo(37.2, 9);
  });

  it('keeps the cross-ratio of four marks, whatever the view (projective geometry)', () => {
    const ratio = ([p, q, r, s]: readonly [number, number, number, number]) => ((r - p) * (s - q)) / ((r - q) * (s - p));
    expect(ratio([0, 20, 50, 100])).toBeCloseTo(4 / 3, 12);
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 40, noNaN: true }),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        fc.double({ min: -0.004, max: 0.004, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 0, max: 150 }), { minLength: 4, maxLength: 4 }),
        (a, b, c, marks) => {
          const line = { a, b, c };
          fc.pre(Math.abs(a - b * c) > 0.5 && marks.every((mark) => c * mark + 1 > 0.2));
          const [p = 0, q = 0, r = 0, s = 0] = marks;
          const before = ratio([p, q, r, s]);
          const after = ratio([placeOn(line, p), placeOn(line, q), placeOn(line, r), placeOn(line, s)]);
          expect(Math.abs(after / before - 1)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('leaves out marks that lie off', () => {
    const fit = fitProjectiveLine(NUMBERS, TILTED.with(3, -180).with(8, 280));
    expect(fit?.used.flatMap((used, index) => (used ? [] : [index]))).toEqual([3, 8]);
    expect(fit?.c).toBeCloseTo(0.00120898325, 9);
  });

  it('states the covariance that repeated noise shows', () => {
    const chance = randomSource(11);
    const fits = Array.from({ length: 300 }, () =>
      fitProjectiveLine(
        NUMBERS,
        TILTED.map((place) => place + chance.normal(0.3)),
        5,
      ),
    );
    const stated = fits.reduce((sum, fit) => sum + Math.sqrt(fit?.covariance[2]?.[2] ?? 0), 0) / fits.length;
    const shown = standardDeviationOf(fits.map((fit) => fit?.c ?? 0));
    expect(shown / stated).toBeGreaterThan(0.8);
    expect(shown / stated).toBeLessThan(1.25);
  });

  it('is not determined by three marks', () => {
    expect(fitProjectiveLine([0, 1, 2], [0, 10, 19])).toBeNull();
  });
});
