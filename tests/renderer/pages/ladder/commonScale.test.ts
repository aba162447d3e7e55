import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barLengthMm, fittingScale, openingScale, spacingOf } from '../../../../src/renderer/pages/ladder/gallery/commonScale.ts';

const HEIGHT_PX = 380;
const spaceOf = (plates: readonly { widthMm: number; heightMm: number }[], widthPx: number, empty = 0) => {
  const place = { widthPx, heightPx: HEIGHT_PX, empty };
  return { ...place, ...spacingOf(plates, place) };
};

describe('fittingScale', () => {
  it('lets the tallest plate fill the height where there is width enough', () => {
    const plates = [{ widthMm: 50, heightMm: 95 }];
    expect(fittingScale(plates, spaceOf(plates, 1000))).toBe(4);
  });

  it('fits all into the row, also thirty beside empty places, and uses width or height up', () => {
    const plate = fc.double({ min: 10, max: 200, noNaN: true }).map((sideMm) => ({ widthMm: sideMm, heightMm: sideMm }));
    fc.assert(
      fc.property(
        fc.array(plate, { minLength: 1, maxLength: 24 }),
        fc.integer({ min: 0, max: 6 }),
        fc.integer({ min: 580, max: 1400 }),
        (plates, empty, widthPx) => {
          const space = spaceOf(plates, widthPx, empty);
          const scale = fittingScale(plates, space);
          const plain = plates.reduce((sum, { widthMm }) => sum + Math.max(space.narrowestPx, widthMm * scale), 0);
          const usedPx = plain + empty * space.narrowestPx + space.gapPx * (plates.length + empty - 1);
          const tallestPx = Math.max(...plates.map(({ heightMm }) => heightMm * scale));
          expect(usedPx).toBeLessThanOrEqual(widthPx + 1e-3);
          expect(tallestPx).toBeLessThanOrEqual(HEIGHT_PX + 1e-6);
          expect(Math.max(usedPx / widthPx, tallestPx / HEIGHT_PX)).toBeGreaterThan(1 - 1e-5);
        },
      ),
    );
  });
});

describe('spacingOf', () => {
  // Six skins, each a quarter larger than the one before, in half of a window.
  const plates = [0, 1, 2, 3, 4, 5].map((molts) => ({ widthMm: 40 * 1.25 ** molts, heightMm: 46 * 1.25 ** molts }));

  it('lets the smallest skins take less where the largest would come to nothing', () => {
    const space = spaceOf(plates, 470);
    const largestPx = 40 * 1.25 ** 5 * fittingScale(plates, space);
    expect(largestPx).toBeGreaterThan(1.4 * (470 / 6));
  });

  it('leaves each its share where all are seen well', () => {
    expect(spaceOf(plates, 1100).narrowestPx).toBeCloseTo(136, 0);
  });
});

describe('openingScale', () => {
  const plates = [80, 100, 120].map((sideMm) => ({ widthMm: sideMm, heightMm: (sideMm * 4) / 3 }));
  const space = (widthPx: number) => ({ widthPx, heightPx: HEIGHT_PX, empty: 0, narrowestPx: 20, gapPx: 10 });

  it('lets the row scroll rather than shrink the skins to nothing, and is the fitting one otherwise', () => {
    expect(openingScale(0.5, plates, space(900))).toBe(2);
    expect(openingScale(1.5, plates, space(900))).toBe(1.5);
  });

  it('shows the newest two whole, which are what one compares', () => {
    expect(openingScale(0.5, plates, space(340))).toBe(1.5);
    expect(openingScale(0.9, plates, space(100))).toBe(0.9);
  });
});

describe('barLengthMm', () => {
  it.each([
    [1, 180, 100],
    [2, 180, 50],
    [3.7, 180, 20],
    [10, 180, 10],
    [40, 180, 2],
    [0.25, 180, 500],
  ])('is round and fits: at %f px/mm in %f px it is %f mm', (pxPerMm, longestPx, expected) => {
    expect(barLengthMm(pxPerMm, longestPx)).toBe(expected);
  });
});
