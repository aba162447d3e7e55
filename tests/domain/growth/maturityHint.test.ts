import { describe, expect, it } from 'vitest';
import { askMaturity } from '../../../src/domain/growth/maturityHint.ts';
import { growthRatio } from '../../../src/domain/growth/ratio.ts';
import { type Estimate, estimateFrom } from '../../../src/domain/measuring/quantity.ts';

const steady = [2.55, 2.6, 2.62].map((share) => estimateFrom(share, 0.02));
// Leg I over carapace of Aphonopelma madera: females 2.624, males 3.461 (Hamilton CA et al. 2016, ZooKeys 560:1-340; ratios of the printed means).
const grownMale = estimateFrom(3.461, 0.03);

/** From one instar to the next, of shares of instars that followed each other. */
function gains(shares: readonly Estimate[]): Estimate[] {
  return shares.slice(1).map((later, index) => growthRatio(later, shares[index] ?? later));
}

describe('askMaturity', () => {
  it('asks where the legs of a male or unsexed animal jump', () => {
    const evidence = { legGains: gains([...steady, grownMale]), intervalDays: [], waitedDays: 20 };
    expect(askMaturity({ ...evidence, sex: 'male' })?.legsGainedPercent).toBeCloseTo(100 * (3.461 / 2.62 - 1), 6);
    expect(askMaturity({ ...evidence, sex: 'unsexed' })).toMatchObject({ waitedDays: null, longestIntervalDays: null });
  });

  it('never asks about a female', () => {
    expect(askMaturity({ sex: 'female', legGains: gains([...steady, grownMale]), intervalDays: [100, 100], waitedDays: 900 })).toBeNull();
  });

  it('asks where a male has waited for more than twice his longest latest interval', () => {
    const male = { sex: 'male', legGains: gains(steady), intervalDays: [300, 120, 150, 180] } as const;
    expect(askMaturity({ ...male, waitedDays: 361 })).toEqual({ legsGainedPercent: null, waitedDays: 361, longestIntervalDays: 180 });
    expect(askMaturity({ ...male, waitedDays: 360 })).toBeNull();
    expect(askMaturity({ ...male, sex: 'unsexed', waitedDays: 900 })).toBeNull();
    expect(askMaturity({ ...male, intervalDays: [120], waitedDays: 900 })).toBeNull();
    expect(askMaturity({ ...male, waitedDays: null })).toBeNull();
  });

  it('does not take a gain for a jump that is small, within its uncertainty, or not the largest', () => {
    const male = { sex: 'male', intervalDays: [], waitedDays: null } as const;
    expect(askMaturity({ ...male, legGains: gains([...steady, estimateFrom(2.7, 0.02)]) })).toBeNull();
    expect(askMaturity({ ...male, legGains: gains([...steady, estimateFrom(3, 0.3)]) })).toBeNull();
    expect(askMaturity({ ...male, legGains: gains([1.8, 2.5, 3].map((share) => estimateFrom(share, 0.02))) })).toBeNull();
    expect(askMaturity({ ...male, legGains: [] })).toBeNull();
  });

  it('asks of the last molt alone: a jump before a skin whose legs were not measured is none of it', () => {
    const male = { sex: 'male', intervalDays: [], waitedDays: null } as const;
    const jump = gains([...steady, grownMale]);
    expect(askMaturity({ ...male, legGains: [...jump, null] })).toBeNull();
    expect(askMaturity({ ...male, legGains: [null, ...jump.slice(-1)] })).not.toBeNull();
  });
});
