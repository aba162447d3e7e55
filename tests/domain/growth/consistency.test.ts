import { describe, expect, it } from 'vitest';
import { consistencyOf } from '../../../src/domain/growth/consistency.ts';
import type { MeasuredLength } from '../../../src/domain/growth/measuredLength.ts';

function read(valueMm: number, parts: MeasuredLength['parts'], calibratedBy = 'photo-1'): MeasuredLength {
  return { valueMm, parts, calibratedBy };
}

describe('consistencyOf', () => {
  it('is chi-square about the weighted mean for independent readings', () => {
    const consistency = consistencyOf([read(10, { pointing: 0.1 }), read(10.2, { pointing: 0.1 }, 'photo-2')]);
    // (0.2)^2 / (0.1^2 + 0.1^2) = 2; P(chi^2_1 > 2) = 0.1573 (Abramowitz & Stegun, table 26.7).
    expect(consistency?.chiSquared).toBeCloseTo(2, 10);
    expect(consistency?.birgeRatio).toBeCloseTo(Math.SQRT2, 10);
    expect(consistency?.probability).toBeCloseTo(0.1573, 4);
    expect(consistency?.agree).toBe(true);
  });

  it('does not let an error that both share excuse their difference', () => {
    const parts = { pointing: 0.02, 'scale-object': 0.5, height: 0.5, calibration: 0.5 } as const;
    const onePhoto = consistencyOf([read(10, parts), read(10.2, parts)]);
    expect(onePhoto?.chiSquared).toBeCloseTo(50, 6);
    expect(onePhoto?.agree).toBe(false);
    expect(consistencyOf([read(10, parts), read(10.2, parts, 'photo-2')])?.agree).toBe(true);
  });

  it('lets the scale objects of two photos account for what they may be off', () => {
    const parts = { pointing: 0.02, 'scale-object': 0.1 } as const;
    expect(consistencyOf([read(10, parts), read(10.2, parts)])?.agree).toBe(false);
    // 0.2^2 / (2 (0.02^2 + 0.1^2)) = 1.923.
    expect(consistencyOf([read(10, parts), read(10.2, parts, 'photo-2')])?.chiSquared).toBeCloseTo(1.923, 3);
  });

  it('says nothing of one reading, nor where nothing could differ', () => {
    expect(consistencyOf([read(10, { pointing: 0.1 })])).toBeNull();
    expect(consistencyOf([read(10, {}), read(11, {})])).toBeNull();
  });
});
