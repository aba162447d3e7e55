import { describe, expect, test } from 'vitest';
import { Refusal } from '../../../src/domain/failure.ts';
import type { FoundScale } from '../../../src/domain/finding/foundScale.ts';
import type { RoughScale } from '../../../src/domain/finding/refinement.ts';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import { dropRefining, takeFound } from '../../../src/renderer/bench/deeds/finding.ts';
import { placeAt } from '../../../src/renderer/bench/deeds/placing.ts';
import { beginPlacingScale } from '../../../src/renderer/bench/deeds/scale.ts';
import { nudgeSelected, select } from '../../../src/renderer/bench/deeds/selection.ts';
import { stepBack, takeUp, undoChange } from '../../../src/renderer/bench/deeds/travel.ts';
import { startRefining } from '../../../src/renderer/bench/refiner.ts';
import { createBenchStore } from '../../../src/renderer/bench/store.ts';

const at = (xPx: number, yPx: number) => ({ xPx, yPx });
const FITTED: RectangleScale = {
  kind: 'rectangle',
  object: 'id-1',
  corners: [at(200, 300), at(1000, 300), at(1000, 800), at(200, 800)],
  widthMm: 85.6,
  heightMm: 53.98,
  widthStandardUncertaintyMm: 0.075,
  heightStandardUncertaintyMm: 0.035,
  thicknessMm: 0.76,
  pointingPx: 0.1,
};
const SIDE = { support: 1, residualPx: 0.1 };
const FOUND: FoundScale = { marks: FITTED, evidence: { kind: 'sides', sides: [SIDE, SIDE, SIDE, SIDE], lost: [] } };

/** A Bench whose wishes are answered when the test says so. */
function benchWithFinder() {
  const bench = createBenchStore({ width: 2016, height: 1512 }, {});
  const asked: { rough: RoughScale; signal: AbortSignal; answer: (found: FoundScale) => void; refuse: (error: unknown) => void }[] = [];
  startRefining(bench, (rough, signal) => new Promise((answer, refuse) => asked.push({ rough, signal, answer, refuse })));
  return { bench, asked };
}

const settled = () => new Promise((resolve) => setImmediate(resolve));

describe('pointing at a scale object', () => {
  test('asks after two clicks on a rule, after three on a rim, and after one on the middle of a coin', () => {
    const { bench, asked } = benchWithFinder();
    beginPlacingScale(bench, { kind: 'rule', graduation: 'sixteenth-inch', heightMm: 0.5 });
    placeAt(bench, at(10, 20));
    expect(asked).toEqual([]);
    placeAt(bench, at(900, 30));
    beginPlacingScale(bench, { kind: 'coin', disk: { coin: 'euro-1' }, by: 'middle' });
    placeAt(bench, at(500, 600));
    beginPlacingScale(bench, { kind: 'coin', disk: { coin: 'euro-1' }, by: 'rim' });
    for (const place of [at(1, 1), at(50, 1), at(20, 40)]) placeAt(bench, place);
    expect(asked.map(({ rough }) => rough)).toEqual([
      { kind: 'rule', ends: [at(10, 20), at(900, 30)], graduation: 'sixteenth-inch', heightMm: 0.5 },
      { kind: 'coin', disk: { coin: 'euro-1' }, at: [at(500, 600)] },
      { kind: 'coin', disk: { coin: 'euro-1' }, at: [at(1, 1), at(50, 1), at(20, 40)] },
    ]);
    expect(asked.map(({ signal }) => signal.aborted)).toEqual([true, true, false]);
  });

  test('takes over what was found as one change, and undo brings back what was there', async () => {
    const { bench, asked } = benchWithFinder();
    const before = { ...FITTED, pointingPx: 1.5 };
    takeFound(bench, { ...FOUND, marks: before });
    beginPlacingScale(bench, { kind: 'coin', disk: { coin: 'us-dime' }, by: 'middle' });
    placeAt(bench, at(500, 600));
    asked[0]?.answer(FOUND);
    await settled();
    expect(bench.getState().edited.document.scale).toEqual(FITTED);
    undoChange(bench);
    expect(bench.getState().edited.document.scale).toEqual(before);
  });

  test('leaves whoever has gone on to the points there, with the point in hand', async () => {
    const { bench, asked } = benchWithFinder();
    beginPlacingScale(bench, { kind: 'coin', disk: { coin: 'us-dime' }, by: 'middle' });
    placeAt(bench, at(500, 600));
    takeUp(bench, 'landmarks');
    placeAt(bench, at(700, 700));
    const { selected } = bench.getState();
    expect(selected).not.toBeNull();
    asked[0]?.answer(FOUND);
    await settled();
    expect(bench.getState()).toMatchObject({ task: 'landmarks', selected, refining: null });
    expect(bench.getState().edited.document.scale).toEqual(FITTED);
  });

  test('keeps the marks of before when nothing was found, and says why', async () => {
    const { bench, asked } = benchWithFinder();
    takeFound(bench, FOUND);
    beginPlacingScale(bench, { kind: 'rule', graduation: 'millimeter', heightMm: 0 });
    for (const place of [at(10, 20), at(900, 30)]) placeAt(bench, place);
    asked[0]?.refuse(new Refusal({ code: 'ticks-not-found', found: 2, needed: 4 }));
    await settled();
    expect(bench.getState().refining).toMatchObject({ kind: 'failed', failure: { code: 'ticks-not-found' } });
    expect(bench.getState().edited.document.scale).toEqual(FITTED);
    stepBack(bench);
    expect(bench.getState().refining).toBeNull();
  });

  test('tells a defect of finding instead of looking for ever', async () => {
    const { bench, asked } = benchWithFinder();
    beginPlacingScale(bench, { kind: 'coin', disk: { coin: 'us-dime' }, by: 'middle' });
    placeAt(bench, at(500, 600));
    asked[0]?.refuse(new TypeError('no such thing'));
    await settled();
    expect(bench.getState().refining).toMatchObject({
      kind: 'failed',
      failure: { code: 'defect', reference: 'TypeError: no such thing' },
    });
  });

  test('forgets an answer that comes after the wish was dropped', async () => {
    const { bench, asked } = benchWithFinder();
    beginPlacingScale(bench, { kind: 'coin', disk: { coin: 'us-dime' }, by: 'middle' });
    placeAt(bench, at(500, 600));
    dropRefining(bench);
    asked[0]?.answer(FOUND);
    await settled();
    expect(bench.getState().edited.document.scale).toBeUndefined();
  });
});

describe('corners that were fitted to edges', () => {
  test('are as uncertain as a hand again once a hand has moved one of them', () => {
    const { bench } = benchWithFinder();
    takeFound(bench, FOUND);
    select(bench, 'corner-2');
    nudgeSelected(bench, 1, 0, 0);
    expect(bench.getState().edited.document.scale).toMatchObject({ pointingPx: 1.5 });
    undoChange(bench);
    expect(bench.getState().edited.document.scale).toEqual(FITTED);
  });
});
