import { describe, expect, it } from 'vitest';
import { buildLadder } from '../../../../src/domain/growth/ladder.ts';
import { pointsOf } from '../../../../src/renderer/pages/ladder/chart/measures.ts';
import { logTicks, lowerEnd, sizeScale } from '../../../../src/renderer/pages/ladder/chart/scales.ts';
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

describe('sizeScale', () => {
  it('gives equal ratios equal steps', () => {
    const points = pointsOf(
      buildLadder([moltOn('2024-01-01', 1, 4), moltOn('2024-02-01', 2, 6), moltOn('2024-03-01', 3, 9)]),
      'carapaceLengthMm',
    );
    const y = sizeScale(points);
    expect(y(4) - y(6)).toBeCloseTo(y(6) - y(9), 9);
    expect(y(9)).toBeLessThan(y(4));
  });

  it('stays above zero for a size less certain than it is large', () => {
    expect(lowerEnd({ value: 2, expandedUncertainty: 3 })).toBeCloseTo(0.2, 12);
    const points = pointsOf(buildLadder([moltOn('2024-01-01', 1, 2, 1.5)]), 'carapaceLengthMm');
    expect(
      sizeScale(points)
        .domain()
        .every((end) => end > 0 && Number.isFinite(end)),
    ).toBe(true);
  });
});
