import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  chanceFromFirstLook,
  chanceFromWideStart,
  chanceOfLasting,
  type IntervalLaw,
  runningIntervalQuantile,
  unseenStartQuantile,
  wideStartQuantile,
} from '../../../../src/domain/growth/forecast/waiting.ts';
import { normalDeviate, seededGenerator } from '../../../../src/domain/numerics/generator.ts';

/** So many degrees of freedom that Student's t is the normal distribution. */
const NORMAL = 1e6;
const LAW: IntervalLaw = { location: Math.log(120), variance: 0.4 ** 2, degreesOfFreedom: NORMAL };

function sampleQuantile(sample: readonly number[], probability: number): number {
  const sorted = sample.toSorted((a, b) => a - b);
  return sorted[Math.floor(probability * sorted.length)] ?? Number.NaN;
}

describe('runningIntervalQuantile', () => {
  it.each([0.05, 0.25, 0.5, 0.75, 0.95])('is the log-normal quantile of jStat before any wait, at %f', (probability) => {
    const expected = jStat.lognormal.inv(probability, LAW.location, 0.4);
    expect(runningIntervalQuantile(LAW, 0, probability) / expected).toBeCloseTo(1, 5);
    expect(Math.log(runningIntervalQuantile(LAW, 0, probability))).toBeCloseTo(jStat.normal.inv(probability, LAW.location, 0.4), 5);
  });

  it('follows Student with few degrees of freedom, as jStat has it', () => {
    const law = { ...LAW, degreesOfFreedom: 7 };
    // Student's t with v degrees of freedom has the variance v / (v - 2).
    const scale = 0.4 * Math.sqrt(5 / 7);
    expect(Math.log(runningIntervalQuantile(law, 0, 0.95))).toBeCloseTo(LAW.location + scale * jStat.studentt.inv(0.95, 7), 7);
    expect(chanceOfLasting(law, 200)).toBeCloseTo(1 - jStat.studentt.cdf((Math.log(200) - LAW.location) / scale, 7), 8);
  });

  it.each([60, 120, 250])('after %i days of waiting is what intervals that lasted so long came to, drawn 400,000 times', (waited) => {
    const draw = seededGenerator(7);
    const lasted: number[] = [];
    for (let index = 0; index < 400_000; index += 1) {
      const days = Math.exp(LAW.location + 0.4 * normalDeviate(draw));
      if (days > waited) lasted.push(days);
    }
    expect(chanceOfLasting(LAW, waited)).toBeCloseTo(lasted.length / 400_000, 2);
    for (const probability of [0.05, 0.25, 0.5, 0.75, 0.95]) {
      const remaining = runningIntervalQuantile(LAW, waited, probability) - waited;
      const drawn = sampleQuantile(lasted, probability) - waited;
      expect(Math.abs(remaining - drawn)).toBeLessThan(Math.max(1, 0.03 * drawn));
    }
  });

  it('never ends before the wait, whatever the law', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 8, noNaN: true }),
        fc.double({ min: 1e-4, max: 4, noNaN: true }),
        fc.integer({ min: 3, max: 200 }),
        fc.double({ min: 0, max: 40_000, noNaN: true }),
        (location, variance, degreesOfFreedom, waited) => {
          for (const quantile of [runningIntervalQuantile, unseenStartQuantile]) {
            const days = [0.05, 0.25, 0.5, 0.75, 0.95].map((p) => quantile({ location, variance, degreesOfFreedom }, waited, p));
            expect(days.every((one) => Number.isFinite(one) && one >= waited)).toBe(true);
            expect(days.toSorted((a, b) => a - b)).toEqual(days);
          }
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('unseenStartQuantile', () => {
  it.each([0, 90])('is what is left from a random look on, %i days later, in a long row of intervals', (waited) => {
    const draw = seededGenerator(11);
    const ends: number[] = [];
    let age = 0;
    for (let index = 0; index < 200_000; index += 1) {
      age += Math.exp(LAW.location + 0.4 * normalDeviate(draw));
      ends.push(age);
    }
    const looks = Array.from({ length: 200_000 }, () => draw() * age).sort((a, b) => a - b);
    let next = 0;
    const left = looks.flatMap((look) => {
      while ((ends[next] ?? Number.POSITIVE_INFINITY) < look) next += 1;
      const days = (ends[next] ?? Number.NaN) - look;
      return days > waited ? [days] : [];
    });
    expect(chanceFromFirstLook(LAW, waited)).toBeCloseTo(left.length / looks.length, 2);
    for (const probability of [0.05, 0.25, 0.5, 0.75, 0.95]) {
      expect(Math.abs(unseenStartQuantile(LAW, waited, probability) - sampleQuantile(left, probability))).toBeLessThan(1.5);
    }
  });
});

describe('wideStartQuantile', () => {
  it.each([
    [90, 90],
    [90, 200],
    [2500, 2500],
    [2500, 2600],
  ])('is what is left of intervals that began on any day of %i and lasted to day %i, drawn until 100,000 did', (widthDays, waited) => {
    const draw = seededGenerator(13);
    const ends: number[] = [];
    let [tried, began] = [0, 0];
    while (ends.length < 100_000) {
      tried += 1;
      const start = draw() * widthDays;
      const end = start + Math.exp(LAW.location + 0.4 * normalDeviate(draw));
      if (end > waited) ends.push(end);
      if (end > waited) began += chanceOfLasting(LAW, waited - start);
    }
    expect(tried).toBeGreaterThanOrEqual(ends.length);
    const start = { law: LAW, widthDays };
    expect(chanceFromWideStart(start, waited)).toBeCloseTo(began / ends.length, 1);
    for (const probability of [0.05, 0.25, 0.5, 0.75, 0.95]) {
      const [told, drawn] = [wideStartQuantile(start, waited, probability) - waited, sampleQuantile(ends, probability) - waited];
      expect(Math.abs(told - drawn)).toBeLessThan(Math.max(1.5, 0.04 * drawn));
    }
  });

  it('is the same as from a day that is known where the span is a moment', () => {
    for (const probability of [0.05, 0.5, 0.95]) {
      const known = runningIntervalQuantile(LAW, 100, probability);
      expect(wideStartQuantile({ law: LAW, widthDays: 1e-6 }, 100, probability)).toBeCloseTo(known, 1);
    }
    expect(chanceFromWideStart({ law: LAW, widthDays: 1e-6 }, 100)).toBeCloseTo(chanceOfLasting(LAW, 100), 6);
  });

  it('never ends before the wait, and never beyond what lives, whatever the law', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 8, noNaN: true }),
        fc.double({ min: 1e-4, max: 4, noNaN: true }),
        fc.integer({ min: 3, max: 200 }),
        fc.double({ min: 1, max: 20_000, noNaN: true }),
        fc.double({ min: 0, max: 20_000, noNaN: true }),
        (location, variance, degreesOfFreedom, widthDays, since) => {
          const start = { law: { location, variance, degreesOfFreedom }, widthDays };
          const waited = widthDays + since;
          const days = [0.05, 0.25, 0.5, 0.75, 0.95].map((p) => wideStartQuantile(start, waited, p));
          expect(days.every((one) => Number.isFinite(one) && one >= waited)).toBe(true);
          expect(days.toSorted((a, b) => a - b)).toEqual(days);
          const chance = chanceFromWideStart(start, waited);
          expect(chance >= 0 && chance <= 1).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});
