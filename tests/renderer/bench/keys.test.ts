import { beforeEach, describe, expect, test } from 'vitest';
import { placeAt } from '../../../src/renderer/bench/deeds/placing.ts';
import { choosePoint } from '../../../src/renderer/bench/deeds/points.ts';
import { takeUp } from '../../../src/renderer/bench/deeds/travel.ts';
import { setCanvas } from '../../../src/renderer/bench/gestures.ts';
import { type KeyPress, pressKey } from '../../../src/renderer/bench/keys.ts';
import { type BenchStore, createBenchStore } from '../../../src/renderer/bench/store.ts';

let bench: BenchStore;
const key = (name: string, more: Partial<KeyPress> = {}): boolean =>
  pressKey(bench, { key: name, shift: false, alt: false, command: false, atMs: 0, focus: 'photo', ...more });
const front = () => bench.getState().edited.document['carapace-front'];

beforeEach(() => {
  bench = createBenchStore({ width: 2000, height: 1500 }, {});
  setCanvas(bench, { width: 1000, height: 750 });
  takeUp(bench, 'landmarks');
});

describe('the keys of the Bench', () => {
  test('arrows move the selected point by 1, 10 and 0.1 pixels', () => {
    placeAt(bench, { xPx: 100, yPx: 100 });
    key('ArrowRight');
    key('ArrowDown', { shift: true });
    key('ArrowLeft', { alt: true });
    expect(front()).toEqual({ state: 'placed', at: { xPx: 100.9, yPx: 110 } });
  });

  test('a quick run of arrows is undone at once', () => {
    placeAt(bench, { xPx: 100, yPx: 100 });
    for (let press = 0; press < 5; press += 1) key('ArrowRight', { atMs: 100 * press });
    key('z', { command: true });
    expect(front()).toEqual({ state: 'placed', at: { xPx: 100, yPx: 100 } });
    key('Z', { command: true, shift: true });
    expect(front()).toEqual({ state: 'placed', at: { xPx: 105, yPx: 100 } });
  });

  test('Enter places the next point in the middle of the view, but only on the photo', () => {
    expect(key('Enter', { focus: 'point' })).toBe(false);
    key('Enter');
    expect(front()).toEqual({ state: 'placed', at: { xPx: 1000, yPx: 750 } });
  });

  test('E lets points go to edges wherever the focus is; other letters only on the photo and the points', () => {
    expect(key('e', { focus: 'elsewhere' })).toBe(true);
    expect(bench.getState().snaps).toBe(true);
    expect(key('e')).toBe(true);
    expect(bench.getState().snaps).toBe(false);
    expect(key('s', { focus: 'elsewhere' })).toBe(false);
    expect(key('e', { focus: 'elsewhere', command: true })).toBe(false);
    expect(bench.getState().snaps).toBe(false);
  });

  test('with no point selected arrows move the photo', () => {
    const before = bench.getState().view;
    key('+');
    key('ArrowRight');
    expect(bench.getState().view).not.toEqual(before);
    key('0');
    expect(bench.getState().view).toEqual(before);
  });

  test('letters answer the point asked for', () => {
    takeUp(bench, 'landmarks');
    key('v');
    key('s');
    choosePoint(bench, 'leg-L1-metatarsus-tarsus');
    key('m');
    expect(bench.getState().edited.document).toEqual({
      'carapace-front': { state: 'not-visible' },
      'leg-L1-metatarsus-tarsus': { state: 'missing' },
    });
    expect(bench.getState().guide.current).toBe('leg-L1-tarsus-tip');
  });

  test('letters and arrows mean nothing where the focus is elsewhere, undo does', () => {
    key('m');
    expect(key('m', { focus: 'elsewhere' })).toBe(false);
    expect(key('ArrowLeft', { focus: 'elsewhere' })).toBe(false);
    expect(key('z', { focus: 'elsewhere', command: true })).toBe(true);
    expect(front()).toBeUndefined();
  });

  test('Delete takes the selected point away', () => {
    placeAt(bench, { xPx: 100, yPx: 100 });
    key('Delete');
    expect(front()).toBeUndefined();
  });
});
