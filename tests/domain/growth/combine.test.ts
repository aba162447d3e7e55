import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combineReadings, meanOfSides } from '../../../src/domain/growth/combine.ts';
import { type MeasuredLength, measuredLength, standardUncertaintyOf } from '../../../src/domain/growth/measuredLength.ts';
import { quantity } from './skins.ts';

function pointed(valueMm: number, uncertaintyMm: number, calibratedBy = 'photo-1'): MeasuredLength {
  return { valueMm, parts: { pointing: uncertaintyMm }, calibratedBy };
}

describe('combineReadings', () => {
  it('is null for none and the reading itself for one', () => {
    expect(combineReadings([])).toBeNull();
    expect(combineReadings([pointed(10, 0.1)])).toEqual(pointed(10, 0.1));
  });

  it('weighs by inverse variance', () => {
    const combined = combineReadings([pointed(10, 0.1), pointed(10.2, 0.2)]);
    // (10/0.01 + 10.2/0.04) / (1/0.01 + 1/0.04) and 1/sqrt(125).
    expect(combined?.valueMm).toBeCloseTo(10.04, 12);
    expect(combined && standardUncertaintyOf(combined)).toBeCloseTo(1 / Math.sqrt(125), 12);
  });

  it('does not let the error of one calibration average out over readings of one photo', () => {
    const reading = { valueMm: 10, parts: { pointing: 0.03, calibration: 0.04 }, calibratedBy: 'photo-1' };
    const samePhoto = combineReadings([reading, reading]);
    const twoPhotos = combineReadings([reading, { ...reading, calibratedBy: 'photo-2' }]);
    expect(samePhoto?.parts.pointing).toBeCloseTo(0.03 / Math.SQRT2, 12);
    expect(samePhoto?.parts.calibration).toBeCloseTo(0.04, 12);
    expect(twoPhotos?.parts.calibration).toBeCloseTo(0.04 / Math.SQRT2, 12);
  });

  it('does not let the error of the card or of the height average out over photos either', () => {
    const one = { valueMm: 10, parts: { 'scale-object': 0.02, height: 0.05 }, calibratedBy: 'photo-1' } as const;
    const combined = combineReadings([one, { ...one, calibratedBy: 'photo-2' }]);
    expect(combined?.parts['scale-object']).toBeCloseTo(0.02, 12);
    expect(combined?.parts.height).toBeCloseTo(0.05, 12);
  });

  it('says more uncertainty where readings contradict each other', () => {
    const agreeing = combineReadings([pointed(10, 0.1), pointed(10.1, 0.1)]);
    const contradicting = combineReadings([pointed(10, 0.1), pointed(12, 0.1)]);
    expect(agreeing && standardUncertaintyOf(agreeing)).toBeCloseTo(0.1 / Math.SQRT2, 12);
    // Two equal weights: the Birge ratio brings u to half of the difference.
    expect(contradicting && standardUncertaintyOf(contradicting)).toBeCloseTo(1, 12);
  });

  it('lets exact readings speak alone', () => {
    expect(combineReadings([pointed(10, 0), pointed(12, 0.1)])?.valueMm).toBe(10);
  });

  it('stays among its readings, never more uncertain than the best unless they contradict, and does not care for order', () => {
    const reading = fc.record({
      valueMm: fc.double({ min: 9.99, max: 10.01, noNaN: true }),
      parts: fc.record({
        pointing: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
        calibration: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
      }),
      calibratedBy: fc.constantFrom('photo-1', 'photo-2'),
    });
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 5 }), (readings) => {
        const combined = combineReadings(readings);
        const turned = combineReadings([...readings].reverse());
        if (!combined || !turned) throw new Error('expected a combination');
        const values = readings.map(({ valueMm }) => valueMm);
        expect(combined.valueMm).toBeGreaterThanOrEqual(Math.min(...values) - 1e-12);
        expect(combined.valueMm).toBeLessThanOrEqual(Math.max(...values) + 1e-12);
        expect(turned.valueMm).toBeCloseTo(combined.valueMm, 12);
        expect(standardUncertaintyOf(turned)).toBeCloseTo(standardUncertaintyOf(combined), 12);
        expect(standardUncertaintyOf(combined)).toBeLessThanOrEqual(Math.max(...readings.map(standardUncertaintyOf)) + 1e-12);
      }),
    );
  });
});

describe('measuredLength', () => {
  it('keeps what the budget does not explain', () => {
    const length = measuredLength(
      quantity('carapace-length', 10, 0.05, { budget: [{ source: 'pointing', standardUncertainty: 0.03, share: 0.36 }] }),
      'photo-1',
    );
    expect(length.parts.pointing).toBe(0.03);
    expect(length.parts.rest).toBeCloseTo(0.04, 12);
    expect(standardUncertaintyOf(length)).toBeCloseTo(0.05, 12);
  });
});

describe('meanOfSides', () => {
  it('is the plain mean, whatever the uncertainties', () => {
    const mean = meanOfSides([pointed(39.8, 0.1), pointed(40.2, 0.4)]);
    expect(mean?.valueMm).toBe(40);
    expect(mean && standardUncertaintyOf(mean)).toBeCloseTo(Math.hypot(0.1, 0.4) / 2, 12);
  });
});
