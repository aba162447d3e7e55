import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PRZIBRAM_RATIO, ratiosOf } from '../../../src/domain/growth/ratios.ts';
import { publishedSeries } from './publishedSeries.ts';
import { stepsOf } from './trend/sizes.ts';

describe('ratiosOf', () => {
  it.each(publishedSeries)('gives r_gm and exp(b) of $what to the printed digits', ({ lengthsMm, firstInstar, expected }) => {
    const ratios = ratiosOf(stepsOf(lengthsMm, firstInstar));
    expect(ratios.geometricMean?.value.toFixed(4)).toBe(expected.geometricMeanRatio);
    expect(ratios.regression?.value.toFixed(4)).toBe(expected.ratio);
  });

  it.each([
    // Arithmetic mean and standard deviation, worked out apart from this project from the sizes as published (sources: see publishedSeries).
    ['Aglaoctenus lagotis', [0.62, 0.97, 1.35, 1.76, 2.0, 2.47, 3.02, 3.47, 3.82, 4.43, 5.54], '1.2514', '0.1400'],
    ['Centruroides gracilis, females', [1.6, 2.25, 2.96, 3.93, 5.21, 6.65, 8.16], '1.3131', '0.0597'],
    ['Centruroides gracilis, large males', [1.6, 2.25, 3.01, 3.98, 5.26, 6.85, 8.34], '1.3179', '0.0609'],
    // Lourenco WR, Goodman SM (2006) Zool. Anz. 244:181-185.
    ['Grosphus hirtus, females', [1.5, 2.0, 2.6, 3.3, 4.3, 6.1], '1.3248', '0.0571'],
    ['Grosphus hirtus, males', [1.4, 2.0, 2.5, 3.2, 3.7, 4.6], '1.2716', '0.0991'],
    ['Spodoptera frugiperda', [0.35, 0.57, 0.87, 1.29, 1.89, 2.8], '1.5168', '0.0664'],
    ['Spodoptera frugiperda without its third instar', [0.35, 0.57, 1.29, 1.89, 2.8], '1.7096', null],
    ['Cydia pomonella', [0.33, 0.5, 0.82, 1.18, 1.55], '1.4769', '0.1368'],
    ['Diaphorina citri', [0.12, 0.18, 0.35, 0.44, 0.57], '1.4993', '0.3154'],
  ] satisfies [string, number[], string, string | null][])('gives mean and spread of the ratios of %s', (_, lengthsMm, mean, spread) => {
    const ratios = ratiosOf(stepsOf(lengthsMm));
    expect(ratios.arithmeticMean?.toFixed(4)).toBe(mean);
    if (spread !== null) expect(ratios.spread?.toFixed(4)).toBe(spread);
  });

  it('has Przibram beside: 2^(1/3), a growth of 25.99 percent', () => {
    expect(PRZIBRAM_RATIO).toBeCloseTo(1.259921049894873, 15);
    expect(ratiosOf([]).przibram ** 3).toBeCloseTo(2, 12);
  });

  it('takes the root across a gap, and leaves the gap out of the arithmetic mean', () => {
    const ratios = ratiosOf(stepsOf([1.6, 2.25, 2.96, 3.93, 5.21]).filter(({ step }) => step !== 4));
    expect(ratios.stepwise.at(-1)).toMatchObject({ instars: 2 });
    expect(ratios.stepwise.at(-1)?.perInstar.value).toBeCloseTo(Math.sqrt(5.21 / 2.96), 12);
    expect(ratios.stepwise.at(-1)?.perInstar.standardUncertainty).toBeCloseTo((Math.sqrt(5.21 / 2.96) * Math.hypot(0.01, 0.01)) / 2, 12);
    expect(ratios.arithmeticMean).toBeCloseTo((2.25 / 1.6 + 2.96 / 2.25) / 2, 12);
  });

  it('propagates the readings: the end points alone into r_gm, all of them into exp(b)', () => {
    const ratios = ratiosOf(stepsOf([2, 2.6, 3.38, 4.394], 1, 0.01));
    expect(ratios.geometricMean?.standardUncertainty).toBeCloseTo((1.3 * 0.01 * Math.SQRT2) / 3, 10);
    // c = (-1.5, -0.5, 0.5, 1.5) / 5, so u(b) = 0.01 / sqrt(5).
    expect(ratios.regression?.standardUncertainty).toBeCloseTo((1.3 * 0.01) / Math.sqrt(5), 10);
  });

  it('says nothing it does not know', () => {
    expect(ratiosOf([])).toMatchObject({ stepwise: [], arithmeticMean: null, spread: null, geometricMean: null, regression: null });
    expect(ratiosOf(stepsOf([3, 4]))).toMatchObject({ spread: null, regression: null });
  });

  it('never puts the arithmetic mean below the geometric one', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.1, max: 60, noNaN: true }), { minLength: 2, maxLength: 25 }), (lengthsMm) => {
        const ratios = ratiosOf(stepsOf(lengthsMm));
        expect((ratios.arithmeticMean ?? 0) * (1 + 1e-12)).toBeGreaterThanOrEqual(ratios.geometricMean?.value ?? Number.NaN);
      }),
    );
  });
});
