import { describe, expect, it } from 'vitest';
import { fitLine, intersect } from '../../../src/domain/finding/line.ts';
import { meanOf, randomSource, standardDeviationOf } from '../../support/random.ts';

/** Points every 5 px on y = 0.4 x + 3, moved across by noise. */
function noisyLine(seed: number, sigmaPx: number, count = 60) {
  const chance = randomSource(seed);
  const length = Math.hypot(1, 0.4);
  return Array.from({ length: count }, (_, index) => {
    const off = chance.normal(sigmaPx) / length;
    return { xPx: 5 * index - 0.4 * off, yPx: 0.4 * 5 * index + 3 + off };
  });
}

describe('a line through edge points', () => {
  it('is that of Pearson 1901, whose ten points have the best-fitting line y = 5.7841 - 0.5456 x', () => {
    // Pearson, "On lines and planes of closest fit", Philosophical Magazine 2:559, example 1 (points and line from memory).
    const xs = [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
    const ys = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
    // A scale this large makes every point count fully.
    const line = fitLine(
      xs.map((xPx, index) => ({ xPx, yPx: ys[index] ?? 0 })),
      1e4,
    );
    if (!line) throw new Error('Expected a line');
    const slope = line.alongY / line.alongX;
    expect(slope).toBeCloseTo(-0.5456, 3);
    expect(line.through.yPx - slope * line.through.xPx).toBeCloseTo(5.7841, 3);
  });

  it('does not follow a third of the points that lie on something else', () => {
    const points = noisyLine(3, 0.05).map((point, index) => (index < 20 ? { ...point, yPx: point.yPx + 6 + 0.1 * index } : point));
    const line = fitLine(points);
    expect((line?.alongY ?? 0) / (line?.alongX ?? 1)).toBeCloseTo(0.4, 3);
    expect(line?.used).toBeLessThanOrEqual(40);
  });

  it('states how well it is known: the crossing of two scatters as its covariance says', () => {
    const crossings = Array.from({ length: 300 }, (_, seed) => {
      const first = fitLine(noisyLine(2 * seed, 0.3));
      const second = fitLine(noisyLine(2 * seed + 1, 0.3).map(({ xPx, yPx }) => ({ xPx: 200 - yPx, yPx: xPx - 20 })));
      const met = first && second && intersect(first, second);
      if (!met) throw new Error('Expected the lines to meet');
      return met;
    });
    const stated = Math.sqrt(meanOf(crossings.map(({ covariance }) => covariance.xx)));
    expect(standardDeviationOf(crossings.map(({ at }) => at.xPx)) / stated).toBeGreaterThan(0.85);
    expect(standardDeviationOf(crossings.map(({ at }) => at.xPx)) / stated).toBeLessThan(1.15);
  });

  it('is none through two points, and parallel lines meet nowhere', () => {
    expect(fitLine(noisyLine(1, 0, 2))).toBeNull();
    const line = fitLine(noisyLine(1, 0.1));
    expect(line && intersect(line, line)).toBeNull();
  });
});
