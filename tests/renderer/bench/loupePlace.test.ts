import { beforeEach, describe, expect, test } from 'vitest';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import { changeScale } from '../../../src/renderer/bench/deeds/scale.ts';
import { showHandle } from '../../../src/renderer/bench/deeds/selection.ts';
import { takeUp } from '../../../src/renderer/bench/deeds/travel.ts';
import { hoverAt, setCanvas, zoomBy } from '../../../src/renderer/bench/gestures.ts';
import { LOUPE_CSS, LOUPE_MARGIN_CSS, loupePlace } from '../../../src/renderer/bench/loupePlace.ts';
import { type BenchStore, createBenchStore } from '../../../src/renderer/bench/store.ts';
import { toImage } from '../../../src/renderer/bench/view.ts';

const CANVAS = { width: 720, height: 540 };
let bench: BenchStore;
const at = (xCss: number, yCss: number) => toImage(bench.getState().view, { xCss, yCss });

beforeEach(() => {
  bench = createBenchStore({ width: 2016, height: 1512 }, {});
  setCanvas(bench, CANVAS);
});

type Corner = readonly [xCss: number, yCss: number];

/** A card with its corners at these places of the canvas; answers them in the photo. */
function markCard(...places: [Corner, Corner, Corner, Corner]): RectangleScale['corners'] {
  const [first, second, third, fourth] = places;
  const corners: RectangleScale['corners'] = [at(...first), at(...second), at(...third), at(...fourth)];
  takeUp(bench, 'scale');
  changeScale(bench, {
    kind: 'rectangle',
    object: 'a4',
    widthMm: 297,
    heightMm: 210,
    widthStandardUncertaintyMm: 0.9,
    heightStandardUncertaintyMm: 0.9,
    thicknessMm: 0,
    pointingPx: 1.5,
    corners,
  });
  return corners;
}

const LARGE_CARD = [
  [80, 80],
  [640, 80],
  [640, 460],
  [80, 460],
] satisfies [Corner, Corner, Corner, Corner];

describe('the loupe', () => {
  test('stands at the top on the other side of what it looks at', () => {
    expect(loupePlace(bench.getState(), at(100, 100))).toBe('top-right');
    expect(loupePlace(bench.getState(), at(600, 500))).toBe('top-left');
  });

  test('goes below when a handle would lie beneath it', () => {
    const [first] = markCard([80, 80], [640, 80], [400, 500], [80, 460]);
    expect(loupePlace(bench.getState(), first)).toBe('bottom-right');
  });

  test('leaves the place to the pointer that comes to it', () => {
    const edge = LOUPE_MARGIN_CSS + LOUPE_CSS;
    hoverAt(bench, { xCss: CANVAS.width - edge + 1, yCss: edge - 1 });
    expect(loupePlace(bench.getState(), at(100, 100))).toBe('bottom-right');
    hoverAt(bench, { xCss: CANVAS.width - edge - 1, yCss: edge - 1 });
    expect(loupePlace(bench.getState(), at(100, 100))).toBe('top-right');
  });

  test('hides neither what it looks at nor the hand, though it must hide a handle', () => {
    const [first] = markCard(...LARGE_CARD);
    expect(loupePlace(bench.getState(), first)).toBe('top-right');
    hoverAt(bench, { xCss: 640, yCss: 80 });
    expect(loupePlace(bench.getState(), first)).toBe('bottom-right');
  });
});

describe('showing a point from a list', () => {
  test('leaves the photo where it is while the point is in sight', () => {
    markCard(...LARGE_CARD);
    const { view } = bench.getState();
    showHandle(bench, 'corner-3');
    expect(bench.getState()).toMatchObject({ selected: 'corner-3', view });
  });

  test('brings one that is out of sight to the middle', () => {
    const [, , third] = markCard(...LARGE_CARD);
    zoomBy(bench, 4, { xCss: 0, yCss: 0 });
    showHandle(bench, 'corner-3');
    const shown = at(CANVAS.width / 2, CANVAS.height / 2);
    expect(shown.xPx).toBeCloseTo(third.xPx, 6);
    expect(shown.yPx).toBeCloseTo(third.yPx, 6);
  });
});
