import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { predictiveLaw, scaleOf } from '../../../../src/domain/growth/belief/predictive.ts';
import { normalDeviate, seededGenerator } from '../../../../src/domain/numerics/generator.ts';
import { studentTQuantile } from '../../../../src/domain/numerics/studentT.ts';

describe('predictiveLaw', () => {
  it('has the variance of its parts, spread by a Student t of that variance (jStat)', () => {
    const law = predictiveLaw(0, { scatterVariance: 0.09, degreesOfFreedom: 9 }, 1, 0);
    expect(law.degreesOfFreedom).toBe(9);
    expect(scaleOf(law) ** 2 * jStat.studentt.variance(9)).toBeCloseTo(0.09, 12);
  });

  it('grows normal where little of the variance is estimated: the worked formula G.2b of JCGM 100:2008', () => {
    // v_eff = u^4 / (u_1^4 / v_1): half of the variance on 9 degrees of freedom leaves 36.
    expect(predictiveLaw(0, { scatterVariance: 0.04, degreesOfFreedom: 9 }, 2, 0.08).degreesOfFreedom).toBeCloseTo(36, 12);
  });

  it.each([
    ['the scatter alone', 0],
    ['as much of something else', 0.0625],
  ])('covers what animals of unequal scatter do, drawn 200,000 times, with %s', (_, otherVariance) => {
    const draw = seededGenerator(23);
    const degreesOfFreedom = 10;
    const law = predictiveLaw(0, { scatterVariance: 0.0625, degreesOfFreedom }, 1, otherVariance);
    const reach90 = studentTQuantile(0.95, law.degreesOfFreedom) * scaleOf(law);
    const reach50 = studentTQuantile(0.75, law.degreesOfFreedom) * scaleOf(law);
    let within90 = 0;
    let within50 = 0;
    for (let count = 0; count < 200_000; count += 1) {
      let chiSquared = 0;
      for (let one = 0; one < degreesOfFreedom; one += 1) chiSquared += normalDeviate(draw) ** 2;
      const scatterVariance = (0.0625 * (degreesOfFreedom - 2)) / chiSquared;
      const value = Math.sqrt(scatterVariance) * normalDeviate(draw) + Math.sqrt(otherVariance) * normalDeviate(draw);
      if (Math.abs(value) < reach90) within90 += 1;
      if (Math.abs(value) < reach50) within50 += 1;
    }
    expect(Math.abs(within90 / 200_000 - 0.9)).toBeLessThan(0.005);
    expect(Math.abs(within50 / 200_000 - 0.5)).toBeLessThan(0.01);
  });
});
