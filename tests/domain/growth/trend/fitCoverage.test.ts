import { describe, expect, it } from 'vitest';
import type { MeasuredStep } from '../../../../src/domain/growth/measuredStep.ts';
import { bandsOf } from '../../../../src/domain/growth/trend/bands.ts';
import { testCurvature } from '../../../../src/domain/growth/trend/curvature.ts';
import { fitWeighted } from '../../../../src/domain/growth/trend/weightedFit.ts';
import { type Generator, normalDeviate, seededGenerator } from '../../../../src/domain/numerics/generator.ts';

const ANIMALS = 1000;
const LOG_RATIO = Math.log(1.25);

interface Truth {
  readonly skins: number;
  /** ln r changes by so much from molt to molt. */
  readonly change?: number;
  /** The instar whose skin was not kept. */
  readonly lost?: number;
}

interface Life {
  readonly sizes: readonly MeasuredStep[];
  /** Also of the lost skin and of the one after the last. */
  readonly skinsMm: readonly number[];
  /** The size expected after the last skin. */
  readonly expectedNextMm: number;
}

/** Single ln r scatter by 0.04, 0.05 of a ratio of 1.25, and add up; skins are read to 1 %. */
function live({ skins, change = 0, lost }: Truth, draw: Generator): Life {
  const logs = [Math.log(1.5)];
  for (let molt = 0; molt < skins; molt += 1) logs.push((logs[molt] ?? 0) + LOG_RATIO + change * molt + 0.04 * normalDeviate(draw));
  const skinsMm = logs.map((log) => Math.exp(log) * (1 + 0.01 * normalDeviate(draw)));
  const sizes = skinsMm
    .slice(0, skins)
    .map((lengthMm, step) => ({ moltId: `molt-${step}`, step, lengthMm, uncertaintyMm: 0.01 * lengthMm }));
  return {
    sizes: sizes.filter(({ step }) => step !== lost),
    skinsMm,
    expectedNextMm: Math.exp((logs[skins - 1] ?? 0) + LOG_RATIO + change * (skins - 1)),
  };
}

/** Percent of simulated animals of which something holds. */
function shareOf(truth: Truth, holds: (life: Life) => boolean): number {
  const draw = seededGenerator(20_260_615);
  let held = 0;
  for (let animal = 0; animal < ANIMALS; animal += 1) if (holds(live(truth, draw))) held += 1;
  return (100 * held) / ANIMALS;
}

const within = (low: number | undefined, value: number | undefined, high: number | undefined) =>
  low !== undefined && value !== undefined && high !== undefined && low <= value && value <= high;

// Of 1000 animals a share of 95 % comes out within 93.0 and 97.0 in all but one of 300 tries.
describe.each([4, 6, 10, 15])('of %d skins whose growth scatters from molt to molt', (skins) => {
  it('the 95 % interval of the ratio holds the true one in 95 of 100 animals', () => {
    const share = shareOf({ skins }, ({ sizes }) => {
      const fit = fitWeighted(sizes);
      return within(fit?.ratioLow95, 1.25, fit?.ratioHigh95);
    });
    expect(share).toBeGreaterThan(93);
    expect(share).toBeLessThan(98);
  });

  it('no more than 5 in 100 are said to bend that do not', () => {
    expect(shareOf({ skins }, ({ sizes }) => testCurvature(sizes)?.bends ?? false)).toBeLessThan(7);
  });

  it('the bands hold the next skin and the size expected then, in at least so many', () => {
    let expected = 0;
    const one = shareOf({ skins }, ({ sizes, skinsMm, expectedNextMm }) => {
      const next = bandsOf(sizes)?.next;
      if (within(next?.meanLow95Mm, expectedNextMm, next?.meanHigh95Mm)) expected += 100 / ANIMALS;
      return within(next?.oneLow95Mm, skinsMm[skins], next?.oneHigh95Mm);
    });
    // From few skins the bands are wider than they need be: what the readings alone leave open counts by the same quantile of t.
    for (const share of [one, expected]) {
      expect(share).toBeGreaterThan(92.5);
      expect(share).toBeLessThan(skins < 6 ? 100 : 98);
    }
  });
});

describe('of ten skins', () => {
  it('the band across a gap holds the skin that was lost', () => {
    const share = shareOf({ skins: 10, lost: 4 }, ({ sizes, skinsMm }) => {
      const gap = bandsOf(sizes)?.at.find(({ step }) => step === 4);
      return within(gap?.oneLow95Mm, skinsMm[4], gap?.oneHigh95Mm);
    });
    expect(share).toBeGreaterThan(93);
    expect(share).toBeLessThan(99);
  });

  it('a ratio that falls from 1.25 by 3 % a molt is found', () => {
    expect(shareOf({ skins: 10, change: -0.03 }, ({ sizes }) => testCurvature(sizes)?.bends ?? false)).toBeGreaterThan(90);
  });
});
