import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import { borderOfPicture, viewFromAbove } from '../../../src/domain/measuring/fromAbove.ts';
import { toPlane } from '../../../src/domain/measuring/onPlane.ts';
import { photoPointOf } from '../../../src/domain/measuring/photoMap.ts';
import { unwrap } from '../../../src/domain/result.ts';

/** A card seen at a slant. */
const CARD: RectangleScale = {
  kind: 'rectangle',
  object: 'id-1',
  corners: [
    { xPx: 400, yPx: 320 },
    { xPx: 1180, yPx: 300 },
    { xPx: 1260, yPx: 820 },
    { xPx: 330, yPx: 850 },
  ],
  widthMm: 85.6,
  heightMm: 53.98,
  widthStandardUncertaintyMm: 0.075,
  heightStandardUncertaintyMm: 0.035,
  thicknessMm: 0.76,
  pointingPx: 0.3,
};
const PICTURE = { widthPx: 2016, heightPx: 1512, facts: { focalLength35Mm: 26 } };
const calibration = unwrap(calibrate(CARD, PICTURE));

describe('a view from straight above', () => {
  it('shows every millimeter of the plane at the same size, wherever it lies in the photo', () => {
    const view = viewFromAbove(calibration, [{ xPx: 1700, yPx: 1200 }], 10, 10);
    if (view === null) throw new Error('Expected a view');
    for (const [x, y] of [
      [0, 0],
      [321.5, 402],
      [view.widthPx, view.heightPx],
    ] as const) {
      const at = photoPointOf(view.toPhoto, x, y);
      if (at === null) throw new Error('Expected a place of the photo');
      const place = toPlane(calibration, at);
      expect(place?.xMm).toBeCloseTo(view.topLeft.xMm + x / 10, 6);
      expect(place?.yMm).toBeCloseTo(view.topLeft.yMm + y / 10, 6);
    }
  });

  it('stands as the photo does, to the nearest quarter turn, however the corners of the object were numbered', () => {
    const upright = { xPx: 800, yPx: 600 };
    for (const turns of [0, 1, 2, 3]) {
      const marks = { ...CARD, ...(turns % 2 === 0 ? {} : { widthMm: 53.98, heightMm: 85.6 }) };
      const [a, b, c, d] = [0, 1, 2, 3].map((index) => CARD.corners[(index + turns) % 4] ?? upright);
      if (!a || !b || !c || !d) throw new Error('Expected four corners');
      const turned = unwrap(calibrate({ ...marks, corners: [a, b, c, d] }, PICTURE));
      const view = viewFromAbove(turned, [upright], 10, 10, upright);
      if (view === null) throw new Error('Expected a view');
      const seen = (x: number, y: number) => photoPointOf(view.toPhoto, x, y) ?? upright;
      const [from, to] = [seen(400, 300), seen(500, 300)];
      expect(to.xPx - from.xPx).toBeGreaterThan(5 * Math.abs(to.yPx - from.yPx));
      const [place, beside] = [toPlane(turned, from), toPlane(turned, to)];
      expect(Math.hypot((beside?.xMm ?? 0) - (place?.xMm ?? 0), (beside?.yMm ?? 0) - (place?.yMm ?? 0))).toBeCloseTo(10, 6);
    }
  });

  it('holds the object, what is to be shown, and the margin', () => {
    const far = { xPx: 1700, yPx: 1200 };
    const view = viewFromAbove(calibration, [far], 10, 5);
    const place = toPlane(calibration, far);
    expect(view?.topLeft.xMm).toBeLessThanOrEqual(-10);
    expect((view?.topLeft.xMm ?? 0) + (view?.widthPx ?? 0) / 5).toBeGreaterThanOrEqual((place?.xMm ?? 0) + 10);
    expect((view?.topLeft.yMm ?? 0) + (view?.heightPx ?? 0) / 5).toBeGreaterThanOrEqual((place?.yMm ?? 0) + 10);
  });

  it('holds the whole photo where its border is to be shown', () => {
    const picture = { widthPx: 2016, heightPx: 1512 };
    const view = viewFromAbove(calibration, borderOfPicture(calibration, picture), 0, 5);
    if (view === null) throw new Error('Expected a view');
    for (const [xPx, yPx] of [
      [0, 0],
      [picture.widthPx, 0],
      [picture.widthPx, picture.heightPx],
      [0, picture.heightPx],
    ] as const) {
      const corner = toPlane(calibration, { xPx, yPx });
      expect(corner).not.toBeNull();
      const [x, y] = [((corner?.xMm ?? 0) - view.topLeft.xMm) * 5, ((corner?.yMm ?? 0) - view.topLeft.yMm) * 5];
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(-1e-6);
      expect(x).toBeLessThanOrEqual(view.widthPx + 1e-6);
      expect(y).toBeLessThanOrEqual(view.heightPx + 1e-6);
    }
  });

  it('leaves out what looks across the plane', () => {
    const steep = unwrap(
      calibrate(
        {
          kind: 'rectangle',
          object: 'id-1',
          corners: [
            { xPx: 808, yPx: 700 },
            { xPx: 1208, yPx: 700 },
            { xPx: 1308, yPx: 900 },
            { xPx: 708, yPx: 900 },
          ],
          widthMm: 85.6,
          heightMm: 53.98,
          widthStandardUncertaintyMm: 0.075,
          heightStandardUncertaintyMm: 0.035,
          thicknessMm: 0.76,
          pointingPx: 0.3,
        },
        { widthPx: 2016, heightPx: 1512, facts: { focalLength35Mm: null } },
      ),
    );
    const border = borderOfPicture(steep, { widthPx: 2016, heightPx: 1512 });
    expect(border).not.toContainEqual({ xPx: 0, yPx: 0 });
    expect(border).toContainEqual({ xPx: 2016, yPx: 1512 });
    const view = viewFromAbove(steep, border, 0, 40);
    expect(view?.pxPerMm).toBeGreaterThan(1);
  });

  it('becomes no larger than a canvas can be, and leaves points beyond the horizon out', () => {
    const view = viewFromAbove(calibration, [], 10, 400);
    expect(Math.max(view?.widthPx ?? 0, view?.heightPx ?? 0)).toBe(4096);
    const [x, y, w] = calibration.view.imageToPlane.slice(6) as [number, number, number];
    const beyond = { xPx: (-w - 1) / x, yPx: 0 };
    expect(beyond.xPx * x + beyond.yPx * y + w).toBeLessThan(0);
    expect(viewFromAbove(calibration, [beyond], 10, 10)).toEqual(viewFromAbove(calibration, [], 10, 10));
  });
});
