import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { nextLogRatio, sizeAfterMolt } from '../../../src/domain/growth/afterMolt.ts';
import { estimateFrom } from '../../../src/domain/measuring/quantity.ts';
import { lengthsOf, stepsOf } from './trend/sizes.ts';

describe('sizeAfterMolt', () => {
  it("is the skin's size times the ratio, between the ends that Student's t gives", () => {
    const growth = { middle: Math.log(1.3), standardDeviation: 0.04, degreesOfFreedom: 9 };
    const after = sizeAfterMolt(estimateFrom(60, 1.8), growth);
    const reach = jStat.studentt.inv(0.975, 9) * 0.05; // hypot(1.8 / 60, 0.04)
    expect(after?.middleMm).toBeCloseTo(78, 10);
    expect(after?.low95Mm).toBeCloseTo(78 * Math.exp(-reach), 5);
    expect(after?.high95Mm).toBeCloseTo(78 * Math.exp(reach), 5);
  });

  it('grows with the power of the allometry', () => {
    const growth = { middle: Math.log(1.3), standardDeviation: 0, degreesOfFreedom: 9 };
    expect(sizeAfterMolt(estimateFrom(60, 0), growth, 1.2)?.middleMm).toBeCloseTo(60 * 1.3 ** 1.2, 10);
  });
});

describe('nextLogRatio', () => {
  it('is wide and near the family for an animal with one skin or none', () => {
    for (const sizes of [[], stepsOf([4])]) {
      const next = nextLogRatio(sizes);
      expect(Math.exp(next.middle)).toBeCloseTo(1.3, 6);
      // 95 % from about 1.10 to 1.55, one molt's own scatter included.
      expect(Math.exp(next.middle - 2 * next.standardDeviation)).toBeLessThan(1.1);
      expect(Math.exp(next.middle + 2 * next.standardDeviation)).toBeGreaterThan(1.55);
    }
  });

  it('comes to the own ratio with the skins, and narrows', () => {
    const few = nextLogRatio(stepsOf(lengthsOf(2, [1.22, 1.22])));
    const many = nextLogRatio(
      stepsOf(
        lengthsOf(
          2,
          Array.from({ length: 10 }, () => 1.22),
        ),
      ),
    );
    expect(Math.abs(many.middle - Math.log(1.22))).toBeLessThan(0.03);
    expect(many.standardDeviation).toBeLessThan(few.standardDeviation);
  });

  it('follows ratios that fall', () => {
    const falling = stepsOf(lengthsOf(1, [1.5, 1.46, 1.42, 1.38, 1.34, 1.3, 1.26]));
    const next = Math.exp(nextLogRatio(falling).middle);
    expect(next).toBeLessThan(1.3);
    expect(next).toBeGreaterThan(1.15);
  });

  it('holds the last instar of Centruroides gracilis, foretold from those before', () => {
    // Francke OF, Jones SK (1982) J. Arachnol. 10:223-239, females.
    const lengthsMm = [1.6, 2.25, 2.96, 3.93, 5.21, 6.65];
    const after = sizeAfterMolt(estimateFrom(6.65, 0.05), nextLogRatio(stepsOf(lengthsMm)));
    expect(after?.low95Mm).toBeLessThan(8.16);
    expect(after?.high95Mm).toBeGreaterThan(8.16);
  });
});
