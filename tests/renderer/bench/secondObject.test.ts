import { beforeEach, describe, expect, test } from 'vitest';
import { placeAt } from '../../../src/renderer/bench/deeds/placing.ts';
import { beginPlacingScale, removeCheck, removeScale, swapScales } from '../../../src/renderer/bench/deeds/scale.ts';
import { undoChange } from '../../../src/renderer/bench/deeds/travel.ts';
import { type BenchStore, createBenchStore } from '../../../src/renderer/bench/store.ts';
import type { PlacingScale } from '../../../src/renderer/bench/tools/placingScale.ts';

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
const at = (xPx: number, yPx: number) => ({ xPx, yPx });

beforeEach(() => {
  bench = createBenchStore({ width: 2016, height: 1512 }, {});
});

function markCard(): void {
  beginPlacingScale(bench, card);
  for (const corner of [at(1000, 800), at(200, 300), at(1000, 300), at(200, 800)]) placeAt(bench, corner);
}

describe('a second object', () => {
  const length: PlacingScale['object'] = {
    kind: 'two-points',
    distanceMm: 50,
    distanceStandardUncertaintyMm: 0.06,
    pointingPx: 1.5,
    heightMm: 0,
  };
  function markCheck(): void {
    beginPlacingScale(bench, length, 'check');
    for (const end of [at(200, 1000), at(667, 1000)]) placeAt(bench, end);
  }

  test('checks the scale and leaves it as it is; the next object that is marked gives the scale again', () => {
    markCard();
    const before = document().scale;
    markCheck();
    expect(document().scale).toBe(before);
    expect(document().check).toMatchObject({ kind: 'two-points', ends: [at(200, 1000), at(667, 1000)] });
    beginPlacingScale(bench, length);
    for (const end of [at(300, 1000), at(767, 1000)]) placeAt(bench, end);
    expect(document().scale).toMatchObject({ kind: 'two-points', ends: [at(300, 1000), at(767, 1000)] });
    expect(document().check).toMatchObject({ ends: [at(200, 1000), at(667, 1000)] });
  });

  test('changes places with the scale, and back by undo', () => {
    markCard();
    markCheck();
    const { scale, check } = document();
    swapScales(bench);
    expect(document()).toMatchObject({ scale: check, check: scale });
    undoChange(bench);
    expect(document()).toMatchObject({ scale, check });
  });

  test('is taken away alone, or with the scale it checks', () => {
    markCard();
    markCheck();
    removeCheck(bench);
    expect(document().check).toBeUndefined();
    expect(document().scale).toBeDefined();
    undoChange(bench);
    removeScale(bench);
    expect(document()).toEqual({});
  });
});
