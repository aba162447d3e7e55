import { describe, expect, it } from 'vitest';
import { sizesOf } from '../../../src/domain/growth/skinSizes.ts';
import { quantity, skinReading } from './skins.ts';

describe('sizesOf', () => {
  it('has nothing to say without readings', () => {
    expect(sizesOf([])).toEqual({
      carapaceLengthMm: null,
      carapaceWidthMm: null,
      legFirstMm: null,
      legFourthMm: null,
      legSpanMm: null,
      doubted: [],
    });
  });

  it('gives carapace and the mean of both sides of legs I and IV', () => {
    const sizes = sizesOf([
      skinReading('p', [
        quantity('carapace-length', 15.72, 0.1),
        quantity('carapace-width', 13.73, 0.1),
        quantity('leg-L1', 39.3, 0.3),
        quantity('leg-R1', 39.1, 0.4),
        quantity('leg-L4', 43.2, 0.3),
        quantity('leg-R4', 43, 0.3),
        quantity('leg-L2', 30, 0.3),
      ]),
    ]);
    expect(sizes.carapaceLengthMm?.value).toBe(15.72);
    expect(sizes.carapaceWidthMm?.value).toBe(13.73);
    expect(sizes.legFirstMm?.value).toBeCloseTo(39.2, 12);
    expect(sizes.legFirstMm?.standardUncertainty).toBeCloseTo(0.25, 12);
    expect(sizes.legFourthMm?.value).toBeCloseTo(43.1, 12);
  });

  it('leaves a regenerated leg out of the mean', () => {
    const sizes = sizesOf([skinReading('p', [quantity('leg-L1', 21, 0.3, { flags: ['regenerated'] }), quantity('leg-R1', 39, 0.3)])]);
    expect(sizes.legFirstMm?.value).toBe(39);
  });

  it('leaves out a side that one of the readings calls missing or regenerated', () => {
    const whole = skinReading('p', [quantity('leg-L4', 43, 0.3), quantity('leg-R4', 30, 0.3)]);
    const missing = skinReading('q', [quantity('leg-L4', 43, 0.3)], [{ name: 'leg-R4', reason: 'missing' }]);
    expect(sizesOf([whole, missing]).legFourthMm?.value).toBe(43);
  });

  it('keeps a side that is merely not visible in one of the readings', () => {
    const whole = skinReading('p', [quantity('leg-L4', 43, 0.3), quantity('leg-R4', 45, 0.3)]);
    const hidden = skinReading('q', [quantity('leg-L4', 43, 0.3)], [{ name: 'leg-R4', reason: 'not-visible' }]);
    expect(sizesOf([whole, hidden]).legFourthMm?.value).toBeCloseTo(44, 12);
  });

  it('has no leg where both are gone', () => {
    const gone = skinReading(
      'p',
      [],
      [
        { name: 'leg-L1', reason: 'missing' },
        { name: 'leg-R1', reason: 'missing' },
      ],
    );
    expect(sizesOf([gone]).legFirstMm).toBeNull();
  });

  it('takes no size from two landmarks on one spot', () => {
    expect(sizesOf([skinReading('p', [quantity('carapace-length', 0, 0.1)])]).carapaceLengthMm).toBeNull();
  });

  it('takes the longer diagonal for the leg span, from whichever reading has one', () => {
    const legs = skinReading('p', [quantity('span-L1-R4', 61, 1), quantity('span-R1-L4', 64, 1)]);
    const carapaceOnly = skinReading('q', [quantity('carapace-length', 9, 0.1)]);
    expect(sizesOf([legs, carapaceOnly]).legSpanMm?.value).toBe(64);
    expect(sizesOf([carapaceOnly]).legSpanMm).toBeNull();
  });

  it('reaches both legs of a pair that differ by more than their uncertainties', () => {
    const size = sizesOf([skinReading('p', [quantity('leg-L1', 32, 1), quantity('leg-R1', 58, 1)])]).legFirstMm;
    expect(size?.value).toBeCloseTo(45, 12);
    expect(size?.expandedUncertainty).toBeCloseTo(13, 12);
  });

  it('are marked where a reading behind them is hard to believe', () => {
    const reading = skinReading('p', [quantity('leg-L4', 143, 5), quantity('carapace-length', 13, 0.3)]);
    const doubts = [{ code: 'leg-proportion', leg: 'L4', segment: null, lengthMm: 143, carapaceMm: 13 } as const];
    expect(sizesOf([{ ...reading, doubts }]).doubted).toEqual(['legFourthMm']);
    expect(sizesOf([{ ...reading, isScaleDoubted: true }]).doubted).toEqual(['carapaceLengthMm', 'legFourthMm']);
    expect(sizesOf([reading]).doubted).toEqual([]);
  });
});
