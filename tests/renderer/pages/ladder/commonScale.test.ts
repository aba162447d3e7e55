import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  barLengthMm,
  fittingScale,
  GALLERY_GAP_PX,
  NARROWEST_FIGURE_PX,
} from '../../../../src/renderer/pages/ladder/gallery/commonScale.ts';

describe('fittingScale', () => {
  it('lets the tallest plate fill the height where there is width enough', () => {
    expect(fittingScale([{ widthMm: 50, heightMm: 100 }], { widthPx: 1000, heightPx: 400, reservedPx: 0 })).toBe(4);
  });

  it('stays within width and height and uses one of them up', () => {
    const plate = fc.double({ min: 10, max: 200, noNaN: true }).map((sideMm) => ({ widthMm: sideMm, heightMm: sideMm }));
    fc.assert(
      fc.property(fc.array(plate, { minLength: 1, maxLength: 6 }), (plates) => {
        const room = { widthPx: 1100, heightPx: 460, reservedPx: 0 };
        const scale = fittingScale(plates, room);
        const usedPx = plates.reduce(
          (sum, { widthMm }) => sum + Math.max(NARROWEST_FIGURE_PX, widthMm * scale),
          GALLERY_GAP_PX * (plates.length - 1),
        );
        const tallestPx = Math.max(...plates.map(({ heightMm }) => heightMm * scale));
        expect(usedPx).toBeLessThanOrEqual(room.widthPx + 1e-6);
        expect(tallestPx).toBeLessThanOrEqual(room.heightPx + 1e-6);
        expect(Math.max(usedPx / room.widthPx, tallestPx / room.heightPx)).toBeGreaterThan(1 - 1e-6);
      }),
    );
  });

  it('lets the row scroll rather than shrink the skins to nothing', () => {
    const many = Array.from({ length: 40 }, () => ({ widthMm: 160, heightMm: 160 }));
    expect(fittingScale(many, { widthPx: 900, heightPx: 460, reservedPx: 0 })).toBe(2);
  });

  it('does so where the captions alone are too wide', () => {
    const twelve = Array.from({ length: 12 }, (_, index) => ({ widthMm: 20 + 10 * index, heightMm: 20 + 10 * index }));
    expect(fittingScale(twelve, { widthPx: 1100, heightPx: 460, reservedPx: 0 }) * 130).toBeCloseTo(320, 9);
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
