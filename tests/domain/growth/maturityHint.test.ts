import { describe, expect, it } from 'vitest';
import { askMaturity } from '../../../src/domain/growth/maturityHint.ts';
import { estimateFrom } from '../../../src/domain/measuring/quantity.ts';

const steady = [2.55, 2.6, 2.62].map((share) => estimateFrom(share, 0.02));
// Leg I over carapace of Aphonopelma madera: females 2.624, males 3.461 (Hamilton CA et al. 2016, ZooKeys 560:1-340; ratios of the printed means).
const grownMale = estimateFrom(3.461, 0.03);

describe('askMaturity', () => {
  it('asks where the legs of a male or unsexed animal jump', () => {
    const evidence = { legShares: [...steady, grownMale], intervalDays: [], waitedDays: 20 };
    expect(askMaturity({ ...evidence, sex: 'male' })?.legsGainedPercent).toBeCloseTo(100 * (3.461 / 2.62 - 1), 6);
    expect(askMaturity({ ...evidence, sex: 'unsexed' })).toMatchObject({ waitedDays: null, longestIntervalDays: null });
  });

  it('never asks about a female', () => {
    expect(askMaturity({ sex: 'female', legShares: [...steady, grownMale], intervalDays: [100, 100], waitedDays: 900 })).toBeNull();
  });

  it('asks where a male has waited for more than twice his longest latest interval', () => {
    const male = { sex: 'male', legShares: steady, intervalDays: [300, 120, 150, 180] } as const;
    expect(askMaturity({ ...male, waitedDays: 361 })).toEqual({ legsGainedPercent: null, waitedDays: 361, longestIntervalDays: 180 });
    expect(askMaturity({ ...male, waitedDays: 360 })).toBeNull();
    expect(askMaturity({ ...male, sex: 'unsexed', waitedDays: 900 })).toBeNull();
    expect(askMaturity({ ...male, intervalDays: [120], waitedDays: 900 })).toBeNull();
    expect(askMaturity({ ...male, waitedDays: null })).toBeNull();
  });

  it('does not take a gain for a jump that is small, within its uncertainty, or not the largest', () => {
    const male = { sex: 'male', intervalDays: [], waitedDays: null } as const;
    expect(askMaturity({ ...male, legShares: [...steady, estimateFrom(2.7, 0.02)] })).toBeNull();
    expect(askMaturity({ ...male, legShares: [...steady, estimateFrom(3, 0.3)] })).toBeNull();
    expect(askMaturity({ ...male, legShares: [1.8, 2.5, 3].map((share) => estimateFrom(share, 0.02)) })).toBeNull();
    expect(askMaturity({ ...male, legShares: [] })).toBeNull();
  });
});
