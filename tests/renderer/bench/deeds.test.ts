import { beforeEach, describe, expect, test } from 'vitest';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import { placeAt } from '../../../src/renderer/bench/deeds/placing.ts';
import { choosePoint, clearPoints, markAsked, markLeg, markLegRegrown, skipAsked } from '../../../src/renderer/bench/deeds/points.ts';
import { beginPlacingScale, putHandlesDown, removeScale, turnRectangle } from '../../../src/renderer/bench/deeds/scale.ts';
import { nudgeSelected, selectNeighbor } from '../../../src/renderer/bench/deeds/selection.ts';
import { putBack, redoChange, replaceDocument, stepBack, takeUp, undoChange } from '../../../src/renderer/bench/deeds/travel.ts';
import { landmarksOf, placedScaleOf } from '../../../src/renderer/bench/document.ts';
import { pointAt, setCanvas, zoomBy } from '../../../src/renderer/bench/gestures.ts';
import { type BenchStore, createBenchStore, handlesInHand } from '../../../src/renderer/bench/store.ts';
import type { PlacingScale } from '../../../src/renderer/bench/tools/placingScale.ts';
import { fitWhole, toView } from '../../../src/renderer/bench/view.ts';

const card: PlacingScale['object'] = {
  kind: 'rectangle',
  object: 'id-1',
  widthMm: 85.6,
  heightMm: 53.98,
  widthStandardUncertaintyMm: 0.075,
  heightStandardUncertaintyMm: 0.035,
  thicknessMm: 0.76,
  pointingPx: 1.5,
};

let bench: BenchStore;
const document = () => bench.getState().edited.document;
function corners(): RectangleScale | undefined {
  const { scale } = document();
  return scale?.kind === 'rectangle' ? scale : undefined;
}
const at = (xPx: number, yPx: number) => ({ xPx, yPx });

beforeEach(() => {
  bench = createBenchStore({ width: 2016, height: 1512 }, {});
  setCanvas(bench, { width: 1040, height: 790 });
});

/** Presses at one image point, moves to another, and lets go unless told to hold. */
function drag(from: { xPx: number; yPx: number }, to: { xPx: number; yPx: number }, letGo = true): void {
  const { view } = bench.getState();
  const handle = handlesInHand(bench.getState()).find((candidate) => candidate.at.xPx === from.xPx && candidate.at.yPx === from.yPx);
  pointAt(bench, { kind: 'press', pointer: 1, at: toView(view, from), on: handle ?? null, beside: false, pans: false });
  pointAt(bench, { kind: 'move', pointer: 1, at: toView(view, to) });
  if (letGo) pointAt(bench, { kind: 'release', pointer: 1, at: toView(view, to) });
}

/** Presses the handle at an image point and lets go of it at once. */
function tap(where: { xPx: number; yPx: number }): void {
  drag(where, where);
}

function markCard(): void {
  beginPlacingScale(bench, card);
  for (const corner of [at(1000, 800), at(200, 300), at(1000, 300), at(200, 800)]) placeAt(bench, corner);
}

describe('turning to another job', () => {
  test('lets go of a corner, so that arrow keys cannot move it while points are being placed', () => {
    markCard();
    expect(bench.getState().selected).toBe('corner-1');
    takeUp(bench, 'landmarks');
    expect(bench.getState().selected).toBeNull();
    const before = corners();
    expect(nudgeSelected(bench, 1, 0, 0)).toBe(false);
    expect(corners()).toEqual(before);
  });

  test('keeps a point selected between placing points and reading lengths', () => {
    takeUp(bench, 'landmarks');
    placeAt(bench, at(900, 700));
    takeUp(bench, 'lengths');
    expect(bench.getState().selected).toBe('carapace-front');
  });
});

describe('a window that changes its size', () => {
  const roomy = { width: 1040, height: 790 };
  const low = { width: 520, height: 300 };

  test('keeps a photo whole that was shown whole, from the first size on', () => {
    expect(bench.getState().view).toEqual(fitWhole({ width: 2016, height: 1512 }, roomy));
    setCanvas(bench, low);
    expect(bench.getState().view).toEqual(fitWhole({ width: 2016, height: 1512 }, low));
  });

  test('leaves a photo as large as it was that had been enlarged', () => {
    zoomBy(bench, 3);
    const { zoom } = bench.getState().view;
    setCanvas(bench, low);
    expect(bench.getState().view.zoom).toBe(zoom);
  });
});

describe('marking a card', () => {
  test('corners clicked in any order are put in the order that runs round it, the long side first', () => {
    markCard();
    expect(corners()).toMatchObject({ corners: [at(200, 300), at(1000, 300), at(1000, 800), at(200, 800)] });
    expect(bench.getState().edited.past.map(({ label }) => label)).toEqual(['place-scale']);
  });

  test('a corner dragged across another is put right before it is recorded, and stays in hand', () => {
    markCard();
    drag(at(200, 300), at(1500, 900));
    expect(corners()?.corners).toHaveLength(4);
    const { selected } = bench.getState();
    const held = handlesInHand(bench.getState()).find(({ id }) => id === selected);
    expect(held?.at.xPx).toBeCloseTo(1500, 6);
    undoChange(bench);
    expect(corners()).toMatchObject({ corners: [at(200, 300), at(1000, 300), at(1000, 800), at(200, 800)] });
  });

  test('Escape takes the last click back, and with none left ends the marking', () => {
    beginPlacingScale(bench, card);
    placeAt(bench, at(200, 300));
    stepBack(bench);
    expect(bench.getState().placing?.placed).toEqual([]);
    stepBack(bench);
    expect(bench.getState().placing).toBeNull();
  });

  test('handles put down are no scale until each of them was touched', () => {
    beginPlacingScale(bench, card);
    putHandlesDown(bench);
    expect(document().scale).toBeDefined();
    expect(placedScaleOf(document())).toBeUndefined();
    const [first, second, third, fourth] = corners()?.corners ?? [];
    if (!first || !second || !third || !fourth) throw new Error('Expected corners to be put down');
    drag(first, at(first.xPx - 30, first.yPx - 30));
    nudgeSelected(bench, 1, 0, 0);
    drag(second, at(second.xPx + 30, second.yPx - 30));
    tap(third);
    expect(document().roughScale).toEqual(['corner-4']);
    expect(placedScaleOf(document())).toBeUndefined();
    tap(fourth);
    expect(placedScaleOf(document())).toMatchObject({ object: 'id-1' });
    undoChange(bench);
    expect(placedScaleOf(document())).toBeUndefined();
  });

  test('handles put down can be replaced by four clicks, or removed', () => {
    beginPlacingScale(bench, card);
    putHandlesDown(bench);
    removeScale(bench);
    expect(document()).toEqual({});
    beginPlacingScale(bench, card);
    putHandlesDown(bench);
    markCard();
    expect(placedScaleOf(document())).toBeDefined();
  });

  test('handles put down lie inside the picture in the proportion of the card', () => {
    beginPlacingScale(bench, card);
    putHandlesDown(bench);
    const [first, second, third] = corners()?.corners ?? [];
    if (!first || !second || !third) throw new Error('Expected corners to be put down');
    expect((second.xPx - first.xPx) / (third.yPx - second.yPx)).toBeCloseTo(85.6 / 53.98, 9);
    expect(first.xPx).toBeGreaterThan(0);
    expect(third.yPx).toBeLessThan(1512);
  });

  test('turning the rectangle four times changes nothing', () => {
    markCard();
    const before = document();
    for (let turn = 0; turn < 4; turn += 1) turnRectangle(bench);
    expect(document()).toEqual(before);
  });

  test('a corner that the frame cuts off is marked beside the picture, and no farther than a corner may lie', () => {
    beginPlacingScale(bench, card);
    placeAt(bench, at(-505, 300));
    expect(bench.getState().placing?.placed).toEqual([]);
    expect(bench.getState().besidePicture).toEqual(at(-505, 300));
    for (const corner of [at(-300, 300), at(900, 300), at(900, 1000), at(-200, 900)]) placeAt(bench, corner);
    expect(corners()?.corners[0]).toEqual(at(-300, 300));
    drag(at(-300, 300), at(-9000, 310));
    // A quarter of the longer side.
    expect(corners()?.corners[0]).toEqual(at(-504, 310));
    nudgeSelected(bench, -10, 0, 0);
    expect(corners()?.corners[0]).toEqual(at(-504, 310));
    nudgeSelected(bench, 10, 0, 0);
    expect(corners()?.corners[0]).toEqual(at(-494, 310));
  });

  test('the view reaches a corner beside the picture, however far it is zoomed in', () => {
    markCard();
    drag(at(200, 300), at(-400, 310));
    zoomBy(bench, 100);
    selectNeighbor(bench, 1);
    selectNeighbor(bench, -1);
    const { view, canvas } = bench.getState();
    expect(toView(view, at(-400, 310))).toEqual({ xCss: canvas.width / 2, yCss: canvas.height / 2 });
  });

  test('the ends of a distance stay on the picture', () => {
    beginPlacingScale(bench, { kind: 'two-points', distanceMm: 100, distanceStandardUncertaintyMm: 0.1, pointingPx: 1.5, heightMm: 0 });
    placeAt(bench, at(-1, 300));
    expect(bench.getState().placing?.placed).toEqual([]);
    for (const end of [at(100, 300), at(1000, 300)]) placeAt(bench, end);
    drag(at(100, 300), at(-50, 300));
    expect(document().scale).toMatchObject({ ends: [at(0, 300), at(1000, 300)] });
  });

  test('removing the scale can be undone', () => {
    markCard();
    const before = document();
    removeScale(bench);
    expect(document().scale).toBeUndefined();
    undoChange(bench);
    expect(document()).toEqual(before);
  });
});

describe('placing points', () => {
  beforeEach(() => takeUp(bench, 'landmarks'));

  test('each click places the point asked for and the guide goes on', () => {
    placeAt(bench, at(10, 20));
    placeAt(bench, at(30, 40));
    expect(landmarksOf(document())).toEqual({
      'carapace-front': { state: 'placed', at: at(10, 20) },
      'carapace-rear': { state: 'placed', at: at(30, 40) },
    });
    expect(bench.getState().guide.current).toBe('carapace-left');
    expect(bench.getState().selected).toBe('carapace-rear');
  });

  test('undoing a click has the guide ask for its point again', () => {
    placeAt(bench, at(10, 20));
    undoChange(bench);
    expect(document()).toEqual({});
    expect(bench.getState().selected).toBeNull();
    redoChange(bench);
    expect(bench.getState().guide.current).toBe('carapace-rear');
  });

  test('undoing several clicks has the guide ask for each opened point, so that what follows gets its own name', () => {
    for (const xPx of [10, 20, 30]) placeAt(bench, at(xPx, 20));
    undoChange(bench);
    expect(bench.getState().guide.current).toBe('carapace-left');
    undoChange(bench);
    undoChange(bench);
    expect(bench.getState().guide.current).toBe('carapace-front');
    placeAt(bench, at(11, 20));
    placeAt(bench, at(21, 20));
    expect(landmarksOf(document())).toEqual({
      'carapace-front': { state: 'placed', at: at(11, 20) },
      'carapace-rear': { state: 'placed', at: at(21, 20) },
    });
  });

  test('undoing a marked leg has the guide ask for its first joint, a skipped one too', () => {
    choosePoint(bench, 'leg-L1-femur-patella');
    skipAsked(bench);
    markLeg(bench, 'L1', 'missing');
    choosePoint(bench, 'leg-R4-tarsus-tip');
    undoChange(bench);
    expect(bench.getState().guide.current).toBe('leg-L1-trochanter-femur');
  });

  test('undoing a drag leaves the guide at its question', () => {
    placeAt(bench, at(1000, 700));
    drag(at(1000, 700), at(1200, 900));
    undoChange(bench);
    expect(bench.getState().guide.current).toBe('carapace-rear');
  });

  test('a click on a placed point selects it and says so; the same click again places the point asked for there', () => {
    placeAt(bench, at(1000, 700));
    placeAt(bench, at(1000, 900));
    tap(at(1000, 700));
    expect(bench.getState()).toMatchObject({ selected: 'carapace-front', chosenInstead: 'carapace-front' });
    expect(document()['carapace-left']).toBeUndefined();
    tap(at(1000, 700));
    expect(document()['carapace-left']).toEqual({ state: 'placed', at: at(1000, 700) });
    expect(bench.getState()).toMatchObject({ chosenInstead: null, selected: 'carapace-left' });
  });

  test('a click beside the picture places nothing and is told, until the next one lies on it', () => {
    placeAt(bench, at(-40, 700));
    expect(bench.getState().besidePicture).toEqual(at(-40, 700));
    expect(document()['carapace-front']).toBeUndefined();
    placeAt(bench, at(1000, 700));
    expect(bench.getState().besidePicture).toBeNull();
    expect(document()['carapace-front']).toBeDefined();
    placeAt(bench, at(1e6, 700));
    stepBack(bench);
    expect(bench.getState().besidePicture).toBeNull();
    takeUp(bench, 'lengths');
    placeAt(bench, at(-40, 700));
    expect(bench.getState().besidePicture).toBeNull();
  });

  test('a drag, or a click on another point, takes the notice back', () => {
    placeAt(bench, at(1000, 700));
    placeAt(bench, at(1000, 900));
    tap(at(1000, 700));
    drag(at(1000, 700), at(1100, 700));
    expect(bench.getState().chosenInstead).toBeNull();
    tap(at(1100, 700));
    tap(at(1000, 900));
    expect(bench.getState().chosenInstead).toBe('carapace-rear');
    expect(document()['carapace-left']).toBeUndefined();
  });

  test('no part of the carapace can be marked as missing', () => {
    markAsked(bench, 'missing');
    expect(document()).toEqual({});
    markAsked(bench, 'not-visible');
    expect(document()).toEqual({ 'carapace-front': { state: 'not-visible' } });
    choosePoint(bench, 'leg-L1-tarsus-tip');
    markAsked(bench, 'missing');
    expect(document()['leg-L1-tarsus-tip']).toEqual({ state: 'missing' });
  });

  test('a drag in hand is dropped by Escape and leaves no entry', () => {
    placeAt(bench, at(1000, 700));
    drag(at(1000, 700), at(1200, 900), false);
    expect(landmarksOf(document())['carapace-front']).not.toEqual({ state: 'placed', at: at(1000, 700) });
    stepBack(bench);
    expect(landmarksOf(document())['carapace-front']).toEqual({ state: 'placed', at: at(1000, 700) });
    expect(bench.getState().edited.past).toHaveLength(1);
  });

  test('a point cannot be dragged or nudged out of the picture', () => {
    placeAt(bench, at(2015, 700));
    nudgeSelected(bench, 10, 0, 0);
    expect(landmarksOf(document())['carapace-front']).toEqual({ state: 'placed', at: at(2016, 700) });
  });

  test('a leg is missing at one stroke and comes back at one stroke', () => {
    choosePoint(bench, 'leg-L2-trochanter-femur');
    placeAt(bench, at(50, 60));
    markLeg(bench, 'L2', 'missing');
    expect(document()['leg-L2-trochanter-femur']).toEqual({ state: 'missing' });
    expect(bench.getState().guide.current).toBe('leg-L3-trochanter-femur');
    undoChange(bench);
    expect(document()['leg-L2-trochanter-femur']).toEqual({ state: 'placed', at: at(50, 60) });
  });

  test('points placed on a regrown leg are regenerated', () => {
    choosePoint(bench, 'leg-R3-trochanter-femur');
    markLegRegrown(bench, 'R3', true);
    placeAt(bench, at(50, 60));
    expect(document()['leg-R3-trochanter-femur']).toEqual({ state: 'regenerated', at: at(50, 60) });
  });

  test('a point taken away is asked for again', () => {
    placeAt(bench, at(10, 20));
    clearPoints(bench, ['carapace-front']);
    expect(bench.getState().guide.current).toBe('carapace-front');
    expect(document()).toEqual({});
  });

  test('going from point to point runs round', () => {
    for (const xPx of [100, 200, 300]) placeAt(bench, at(xPx, 100));
    selectNeighbor(bench, 1);
    expect(bench.getState().selected).toBe('carapace-front');
    selectNeighbor(bench, -1);
    expect(bench.getState().selected).toBe('carapace-left');
  });

  test('corners stay where they are while points are being placed', () => {
    markCard();
    takeUp(bench, 'landmarks');
    drag(at(200, 300), at(400, 400));
    expect(corners()).toMatchObject({ corners: [at(200, 300), at(1000, 300), at(1000, 800), at(200, 800)] });
  });
});

describe('when another window changed the photo', () => {
  test('its marks replace ours without a past, and ours can be put back as one change', () => {
    takeUp(bench, 'landmarks');
    placeAt(bench, at(10, 20));
    const ours = document();
    replaceDocument(bench, { 'carapace-rear': { state: 'missing' } });
    expect(bench.getState().edited.past).toHaveLength(0);
    putBack(bench, ours);
    expect(document()).toEqual(ours);
    undoChange(bench);
    expect(document()).toEqual({ 'carapace-rear': { state: 'missing' } });
  });
});
