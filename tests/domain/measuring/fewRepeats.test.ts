import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { measuredLength, standardUncertaintyOf } from '../../../src/domain/growth/measuredLength.ts';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { type MeasuringOptions, measure } from '../../../src/domain/measuring/measure.ts';
import type { Quantity } from '../../../src/domain/measuring/quantity.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { randomSource } from '../../support/random.ts';

const at = (xPx: number, yPx: number) => ({ state: 'placed' as const, at: { xPx, yPx } });
const CARAPACE: Landmarks = { 'carapace-front': at(1000, 500), 'carapace-rear': at(1000, 700) };

/** An exact card seen straight from above, 10 px for each mm: nothing but the clicks is uncertain. */
const EXACT = unwrap(
  calibrate(
    {
      kind: 'rectangle',
      object: 'id-1',
      corners: [
        { xPx: 500, yPx: 300 },
        { xPx: 1500, yPx: 300 },
        { xPx: 1500, yPx: 900 },
        { xPx: 500, yPx: 900 },
      ],
      widthMm: 100,
      heightMm: 60,
      widthStandardUncertaintyMm: 0,
      heightStandardUncertaintyMm: 0,
      thicknessMm: 0,
      pointingPx: 1e-6,
    },
    { widthPx: 2000, heightPx: 1200, facts: { focalLength35Mm: 26 } },
  ),
);

function length(pointing: NonNullable<MeasuringOptions['pointing']>, landmarks = CARAPACE): Quantity {
  const reading = {
    landmarks,
    carapaceHeight: { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 },
    pointingPx: 1.5,
  } as const;
  const exactly = { heightMm: 0, standardUncertaintyMm: 0 };
  const heightsMm = { 'carapace-front': exactly, 'carapace-rear': exactly };
  const found = measure(reading, EXACT, { pointing, heightsMm }).quantities.find(({ name }) => name === 'carapace-length');
  if (!found) throw new Error('Expected a length');
  return found;
}

describe('a length whose clicks are known from few repeats', () => {
  // JCGM 100:2008, table G.2, column 95.45 %.
  it.each([
    [8, 2.37],
    [10, 2.28],
    [20, 2.13],
    [50, 2.05],
  ])('has the coverage factor of %i degrees of freedom where both ends share one estimate', (degreesOfFreedom, factor) => {
    const shared = { pointingPx: 1, degreesOfFreedom };
    const { estimate } = length(() => shared);
    expect(estimate.coverageFactor).toBeCloseTo(factor, 2);
    expect(estimate.expandedUncertainty).toBe((estimate.coverageFactor ?? 0) * estimate.standardUncertainty);
  });

  it('has more degrees of freedom where each end has an estimate of its own (JCGM 100:2008, G.2b)', () => {
    const { estimate } = length(() => ({ pointingPx: 1, degreesOfFreedom: 10 }));
    // Two equal contributions of 10 degrees of freedom each make 20.
    expect(estimate.coverageFactor).toBeCloseTo(2.13, 2);
  });

  it('keeps k = 2, unsaid, where clicks are assumed or were found on an edge', () => {
    expect(length(1.5).estimate).not.toHaveProperty('coverageFactor');
    const onEdges: Landmarks = {
      'carapace-front': { ...at(1000, 500), pointingPx: 0.5 },
      'carapace-rear': { ...at(1000, 700), pointingPx: 0.5 },
    };
    expect(length(() => ({ pointingPx: 1, degreesOfFreedom: 8 }), onEdges).estimate).not.toHaveProperty('coverageFactor');
  });

  it('has k nearer to 2 the less the clicks weigh', () => {
    const shared = { pointingPx: 1, degreesOfFreedom: 8 };
    const oneOnEdge: Landmarks = { ...CARAPACE, 'carapace-rear': { ...at(1000, 700), pointingPx: 3 } };
    const { coverageFactor } = length(() => shared, oneOnEdge).estimate;
    expect(coverageFactor).toBeGreaterThan(2);
    expect(coverageFactor).toBeLessThan(2.01);
  });

  it('keeps its interval among the sizes of a skin, which are told at k = 2', () => {
    const shared = { pointingPx: 1, degreesOfFreedom: 8 };
    const found = length(() => shared);
    expect(2 * standardUncertaintyOf(measuredLength(found, 'photo'))).toBeCloseTo(found.estimate.expandedUncertainty, 12);
  });

  it('lies within its interval as often as stated, where k = 2 would do so too seldom', () => {
    const random = randomSource(31);
    const degreesOfFreedom = 8;
    const draws = 4_000;
    const truth = 20;
    let inside = 0;
    let insideOfTwo = 0;
    for (let draw = 0; draw < draws; draw += 1) {
      let squares = 0;
      for (let index = 0; index < degreesOfFreedom; index += 1) squares += random.normal(1.2) ** 2;
      const shared = { pointingPx: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
      const clicked: Landmarks = {
        'carapace-front': at(1000 + random.normal(1.2), 500 + random.normal(1.2)),
        'carapace-rear': at(1000 + random.normal(1.2), 700 + random.normal(1.2)),
      };
      const { estimate } = length(() => shared, clicked);
      const off = Math.abs(estimate.value - truth);
      if (off <= estimate.expandedUncertainty) inside += 1;
      if (off <= 2 * estimate.standardUncertainty) insideOfTwo += 1;
    }
    // 95.45 % of Student's t, and what k = 2 covers of it by jStat; three binomial standard deviations.
    const level = 0.9545;
    const ofTwo = 1 - 2 * jStat.studentt.cdf(-2, degreesOfFreedom);
    const off = (share: number) => 3 * Math.sqrt((share * (1 - share)) / draws);
    expect(Math.abs(inside / draws - level)).toBeLessThan(off(level));
    expect(Math.abs(insideOfTwo / draws - ofTwo)).toBeLessThan(off(ofTwo));
    expect(ofTwo).toBeLessThan(0.92);
  });
});
