import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  centerOn,
  clamp,
  fitWhole,
  type Ground,
  panBy,
  pinch,
  resized,
  type Size,
  toImage,
  toView,
  type View,
  zoomAbout,
} from '../../../src/renderer/bench/view.ts';

const size: Size = { width: 8064, height: 6048 };
const picture: Ground = { topLeft: { xPx: 0, yPx: 0 }, bottomRight: { xPx: 8064, yPx: 6048 } };
const canvas: Size = { width: 1080, height: 800 };

const views: fc.Arbitrary<View> = fc
  .record({
    zoom: fc.double({ min: 0.05, max: 32, noNaN: true }),
    offset: fc.record({ xCss: fc.double({ min: -9e4, max: 9e4, noNaN: true }), yCss: fc.double({ min: -9e4, max: 9e4, noNaN: true }) }),
  })
  .map((view) => clamp(view, picture, canvas));
const viewPoints = fc.record({ xCss: fc.double({ min: 0, max: 1080, noNaN: true }), yCss: fc.double({ min: 0, max: 800, noNaN: true }) });

describe('the view', () => {
  test('going to the image and back lands on the same point', () => {
    fc.assert(
      fc.property(views, viewPoints, (view, at) => {
        const back = toView(view, toImage(view, at));
        expect(back.xCss).toBeCloseTo(at.xCss, 6);
        expect(back.yCss).toBeCloseTo(at.yCss, 6);
      }),
    );
  });

  test('zooming about a point of the picture keeps it under the pointer while the limits allow', () => {
    const view = fitWhole(size, canvas);
    const about = { xCss: 600, yCss: 300 };
    const zoomed = zoomAbout(view, about, 5, picture, canvas);
    expect(zoomed.zoom).toBeCloseTo(5 * view.zoom, 12);
    expect(toImage(zoomed, about).xPx).toBeCloseTo(toImage(view, about).xPx, 6);
    expect(toImage(zoomed, about).yPx).toBeCloseTo(toImage(view, about).yPx, 6);
  });

  test('no zoom, pan or pinch loses the picture out of sight', () => {
    fc.assert(
      fc.property(views, viewPoints, fc.double({ min: 0.01, max: 100, noNaN: true }), (view, at, factor) => {
        const after = [
          zoomAbout(view, at, factor, picture, canvas),
          panBy(view, 50 * factor, -90 * factor, picture, canvas),
          pinch(view, [at, { xCss: 10, yCss: 20 }], [{ xCss: 700, yCss: 1 }, at], picture, canvas),
        ];
        for (const { zoom, offset } of after) {
          expect(offset.xCss).toBeLessThanOrEqual(canvas.width / 2 + 1e-6);
          expect(offset.xCss + zoom * size.width).toBeGreaterThanOrEqual(canvas.width / 2 - 1e-6);
          expect(offset.yCss).toBeLessThanOrEqual(canvas.height / 2 + 1e-6);
          expect(offset.yCss + zoom * size.height).toBeGreaterThanOrEqual(canvas.height / 2 - 1e-6);
        }
      }),
    );
  });

  test('a ground that reaches beyond the picture can be brought to the middle with all its corners', () => {
    const wider: Ground = { topLeft: { xPx: -900, yPx: -300 }, bottomRight: { xPx: 8064, yPx: 7000 } };
    for (const at of [wider.topLeft, wider.bottomRight]) {
      expect(toView(centerOn(fitWhole(size, canvas), at, 16, wider, canvas), at)).toEqual({ xCss: 540, yCss: 400 });
    }
    const past = panBy({ zoom: 16, offset: { xCss: 0, yCss: 0 } }, 1e9, 1e9, wider, canvas);
    expect(toView(past, wider.topLeft)).toEqual({ xCss: 540, yCss: 400 });
  });

  test('a fitted picture lies whole and centered in the canvas', () => {
    const view = fitWhole(size, canvas);
    const first = toView(view, { xPx: 0, yPx: 0 });
    const last = toView(view, { xPx: size.width, yPx: size.height });
    expect(first.xCss + last.xCss).toBeCloseTo(canvas.width, 6);
    expect(first.yCss + last.yCss).toBeCloseTo(canvas.height, 6);
    expect(first.xCss).toBeGreaterThanOrEqual(0);
    expect(first.yCss).toBeGreaterThanOrEqual(0);
  });

  test('in a pinch the image points stay under both fingers', () => {
    const view = fitWhole(size, canvas);
    const from = [
      { xCss: 400, yCss: 400 },
      { xCss: 600, yCss: 400 },
    ] as const;
    const to = [
      { xCss: 350, yCss: 380 },
      { xCss: 750, yCss: 380 },
    ] as const;
    const after = pinch(view, from, to, picture, canvas);
    for (const finger of [0, 1] as const) {
      expect(toImage(after, to[finger]).xPx).toBeCloseTo(toImage(view, from[finger]).xPx, 6);
      expect(toImage(after, to[finger]).yPx).toBeCloseTo(toImage(view, from[finger]).yPx, 6);
    }
  });

  test('when the canvas changes its size, the middle of it shows the same place', () => {
    const view = zoomAbout(fitWhole(size, canvas), { xCss: 540, yCss: 400 }, 8, picture, canvas);
    const smaller = { width: 640, height: 500 };
    const after = toImage(resized(view, canvas, smaller, picture), { xCss: 320, yCss: 250 });
    const before = toImage(view, { xCss: 540, yCss: 400 });
    expect(after.xPx).toBeCloseTo(before.xPx, 6);
    expect(after.yPx).toBeCloseTo(before.yPx, 6);
  });

  test('centring on a point brings it to the middle, magnified enough, and never zooms out', () => {
    const at = { xPx: 4321.5, yPx: 1234.25 };
    const view = centerOn(fitWhole(size, canvas), at, 1, picture, canvas);
    expect(toView(view, at)).toEqual({ xCss: 540, yCss: 400 });
    expect(centerOn({ ...view, zoom: 4 }, at, 1, picture, canvas).zoom).toBe(4);
  });
});
