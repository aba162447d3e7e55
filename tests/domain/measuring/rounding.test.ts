import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../../src/domain/measuring/quantity.ts';
import { formatEstimate, formatEstimateInInches } from '../../../src/domain/measuring/rounding.ts';
import { inchesFromMm, MM_PER_INCH, mmFromInches } from '../../../src/domain/units.ts';

function estimate(value: number, expandedUncertainty: number): Estimate {
  return { value, standardUncertainty: expandedUncertainty / 2, expandedUncertainty };
}

function shown(value: number, expandedUncertainty: number): string {
  const { value: rounded, expandedUncertainty: uncertainty } = formatEstimate(estimate(value, expandedUncertainty));
  return `${rounded} ± ${uncertainty}`;
}

/** JCGM 100:2008, 7.2.6: at most two significant figures of the uncertainty, the value rounded to the same digit. */
describe('rounding a value to its uncertainty', () => {
  it('rounds the GUM examples of 7.2.2 and 7.2.6', () => {
    // m = 100.021 47 g with U = 0.79 mg; R = 10.057 62 ohm with u = 27 milliohm is quoted as 10.058.
    expect(shown(100.02147, 0.00079)).toBe('100.02147 ± 0.00079');
    expect(shown(10.05762, 0.027)).toBe('10.058 ± 0.027');
  });

  it('keeps trailing zeros that carry meaning', () => {
    expect(shown(12.3, 0.2)).toBe('12.30 ± 0.20');
    expect(shown(7, 0.031)).toBe('7.000 ± 0.031');
  });

  it('carries when the uncertainty rounds up to the next power of ten', () => {
    expect(shown(12.3456, 0.0996)).toBe('12.35 ± 0.10');
    expect(shown(12.3456, 0.996)).toBe('12.3 ± 1.0');
    expect(shown(12.3456, 9.96)).toBe('12 ± 10');
  });

  it('rounds to tens and beyond when the uncertainty is that large', () => {
    expect(shown(1234.5, 123)).toBe('1230 ± 120');
    expect(shown(4, 99.6)).toBe('0 ± 100');
  });

  it('rounds decimals as a person would, halves away from zero', () => {
    expect(shown(1.005, 0.11)).toBe('1.01 ± 0.11');
    expect(shown(-1.005, 0.11)).toBe('-1.01 ± 0.11');
    expect(shown(-0.001, 0.11)).toBe('0.00 ± 0.11');
  });

  it('prints a value without uncertainty to six figures', () => {
    expect(shown(12.345678, 0)).toBe('12.3457 ± 0');
  });
});

describe('inches', () => {
  it('are 25.4 mm exactly (international yard and pound agreement, 1959)', () => {
    expect(MM_PER_INCH).toBe(25.4);
    expect(inchesFromMm(25.4)).toBe(1);
    expect(mmFromInches(0.125)).toBe(3.175);
  });

  it('are rounded by their own uncertainty', () => {
    expect(formatEstimateInInches(estimate(50.8, 0.31))).toEqual({ value: '2.000', expandedUncertainty: '0.012' });
  });
});
