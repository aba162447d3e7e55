import { describe, expect, it } from 'vitest';
import { buildLadder } from '../../../../src/domain/growth/ladder.ts';
import { bandsOf } from '../../../../src/domain/growth/trend/bands.ts';
import { estimateFrom } from '../../../../src/domain/measuring/quantity.ts';
import { pointsOf } from '../../../../src/renderer/pages/ladder/chart/measures.ts';
import { bandRoom, FRAME, logTicks, lowerEnd, sizeScale } from '../../../../src/renderer/pages/ladder/chart/scales.ts';
import { thinned } from '../../../../src/renderer/pages/ladder/chart/thinned.ts';
import { moltOn } from '../../../domain/growth/skins.ts';

describe('logTicks', () => {
  it.each([
    [1.4, 9, [1.5, 2, 3, 5, 7]],
    [4.4, 18, [5, 7, 10, 15]],
    [0.3, 30, [0.5, 1, 2, 5, 10, 20]],
  ])('gives round figures from %f to %f', (low, high, expected) => {
    expect(logTicks(low, high)).toEqual(expected);
  });

  it('has at least two figures even on a range of a tenth', () => {
    expect(logTicks(8.2, 9.1).length).toBeGreaterThanOrEqual(2);
  });
});

describe('figures on an axis', () => {
  it.each([
    [95, 205],
    [140, 172],
    [8.2, 9.1],
    [1, 9.9],
    [151, 158],
  ])('never touch from %f to %f, and there are two at least', (low, high) => {
    const ticks = logTicks(low, high);
    expect(ticks.length).toBeGreaterThanOrEqual(2);
    const heightPx = FRAME.heightPx - FRAME.bottomPx - FRAME.topPx;
    for (const [index, tick] of ticks.slice(1).entries())
      expect((Math.log(tick / (ticks[index] ?? Number.NaN)) / Math.log(high / low)) * heightPx).toBeGreaterThanOrEqual(18);
  });

  it('are thinned from the newest back where the words are wider than a column', () => {
    const row = (apartPx: number) => Array.from({ length: 7 }, (_, index) => ({ xPx: index * apartPx, words: String(20 + index) }));
    expect(thinned(row(40)).map(({ words }) => words)).toHaveLength(7);
    expect(thinned(row(12)).map(({ words }) => words)).toEqual(['20', '22', '24', '26']);
  });
});

describe('sizeScale', () => {
  it('gives equal ratios equal steps', () => {
    const points = pointsOf(
      buildLadder([moltOn('2024-01-01', 1, 4), moltOn('2024-02-01', 2, 6), moltOn('2024-03-01', 3, 9)]),
      'carapaceLengthMm',
      [],
    );
    const y = sizeScale(points.map(({ estimate }) => estimate));
    expect(y(4) - y(6)).toBeCloseTo(y(6) - y(9), 9);
    expect(y(9)).toBeLessThan(y(4));
  });

  it('stays above zero for a size less certain than it is large', () => {
    expect(lowerEnd({ value: 2, expandedUncertainty: 3 })).toBeCloseTo(0.2, 12);
    const { length } = sizeScale([estimateFrom(2, 1.5)])
      .domain()
      .filter((end) => end > 0 && Number.isFinite(end));
    expect(length).toBe(2);
  });
});

describe('pointsOf', () => {
  it('leaves out a size known to no better than half of itself, which would squash all others', () => {
    const ladder = buildLadder([moltOn('2024-01-01', 1, 2, 1.5), moltOn('2024-02-01', 2, 6)]);
    expect(pointsOf(ladder, 'carapaceLengthMm', []).map(({ estimate }) => estimate.value)).toEqual([6]);
  });
});

describe('bandRoom', () => {
  const bandsThrough = (...sizes: number[]) => {
    const bands = bandsOf(sizes.map((lengthMm, step) => ({ moltId: `molt-${step}`, step, lengthMm, uncertaintyMm: 0.01 * lengthMm })));
    if (!bands) throw new Error('three sizes give bands');
    return bands;
  };

  it('leaves room for both bands up to the next skin', () => {
    const bands = bandsThrough(5, 6.4, 7.9, 10.2, 12.9, 16.1);
    const room = bandRoom(bands, [5, 16.1]);
    expect(room.cut).toBe(false);
    const [low = 0, high = 0] = sizeScale([], room.mm).domain();
    for (const band of bands.at) {
      expect(band.oneLow95Mm).toBeGreaterThan(low);
      expect(band.oneHigh95Mm).toBeLessThan(high);
    }
  });

  it('cuts off, and says so, what three skins alone leave open', () => {
    const bands = bandsThrough(5, 7, 7.5);
    const room = bandRoom(bands, [5, 7.5]);
    expect(room.cut).toBe(true);
    expect(Math.max(...room.mm)).toBeLessThan(20);
  });
});
