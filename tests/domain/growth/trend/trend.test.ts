import { jStat } from 'jstat';
import { mean, median, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { fitGrowth } from '../../../../src/domain/growth/growthFit.ts';
import { bandsOf } from '../../../../src/domain/growth/trend/bands.ts';
import { fitParabola, testCurvature } from '../../../../src/domain/growth/trend/curvature.ts';
import { fitRobust } from '../../../../src/domain/growth/trend/robustFit.ts';
import { fitWeighted } from '../../../../src/domain/growth/trend/weightedFit.ts';
import { publishedSeries } from '../publishedSeries.ts';
import { lengthsOf, stepsOf } from './sizes.ts';

// Moreira VSS, Del-Claro K (2011) Zoologia 28:565-570; Francke OF, Jones SK (1982) J. Arachnol. 10:223-239.
const lagotis = [0.62, 0.97, 1.35, 1.76, 2.0, 2.47, 3.02, 3.47, 3.82, 4.43, 5.54];
const gracilis = [1.6, 2.25, 2.96, 3.93, 5.21, 6.65, 8.16];

const logRatiosOf = (lengths: readonly number[]) => lengths.slice(1).map((length, index) => Math.log(length / (lengths[index] ?? 0)));

describe('fitWeighted', () => {
  it.each(publishedSeries)(
    'is plain Student’s t on the single ln r of $what where readings are exact',
    ({ lengthsMm, firstInstar, expected }) => {
      const fit = fitWeighted(stepsOf(lengthsMm, firstInstar, 0));
      expect(fit?.ratio.toFixed(4)).toBe(expected.geometricMeanRatio);
      const logRatios = logRatiosOf(lengthsMm);
      const reach = (jStat.studentt.inv(0.975, logRatios.length - 1) * sampleStandardDeviation(logRatios)) / Math.sqrt(logRatios.length);
      expect(Math.log(fit?.ratioHigh95 ?? 0)).toBeCloseTo(mean(logRatios) + reach, 8);
      expect(Math.log(fit?.ratioLow95 ?? 0)).toBeCloseTo(mean(logRatios) - reach, 8);
      expect(fit?.scatter).toBeCloseTo(sampleStandardDeviation(logRatios), 8);
    },
  );

  it('is the plain fit where the readings alone scatter, equally well known', () => {
    const lengths = lengthsOf(2, [1.3, 1.3, 1.3, 1.3, 1.3]).map((length, index) => length * (index % 2 === 0 ? 1.004 : 0.996));
    const fit = fitWeighted(stepsOf(lengths, 1, 0.01));
    expect(fit?.ratio).toBeCloseTo(fitGrowth(stepsOf(lengths))?.ratio ?? Number.NaN, 10);
    expect(fit?.scatter).toBe(0);
  });

  it('gives way little to a size that is known badly', () => {
    const sizes = stepsOf(lengthsOf(2, [1.3, 1.3, 1.3, 1.3, 1.3]), 1, 0.002);
    const spoiled = sizes.map((size, index) =>
      index === 5 ? { ...size, lengthMm: size.lengthMm * 0.8, uncertaintyMm: size.lengthMm * 0.3 } : size,
    );
    expect(Math.abs((fitWeighted(spoiled)?.ratio ?? 0) - 1.3)).toBeLessThan(0.002);
    expect(Math.abs((fitGrowth(spoiled)?.ratio ?? 0) - 1.3)).toBeGreaterThan(0.03);
  });

  it('needs three, and takes an exact progression as it is', () => {
    expect(fitWeighted(stepsOf([1, 1.3]))).toBeNull();
    const exact = fitWeighted(stepsOf(lengthsOf(2, [1.25, 1.25, 1.25]), 1, 0));
    expect(exact?.ratio).toBeCloseTo(1.25, 10);
    expect(exact?.scatter).toBe(0);
  });
});

describe('fitRobust', () => {
  it('is the worked example of Sen: the median of the slopes between pairs', () => {
    // Sen PK (1968) J. Am. Stat. Assoc. 63:1379, sec. 6 (from memory): his slope is 4.0 for these seven points.
    const x = [1, 2, 3, 4, 10, 12, 18];
    const y = [9, 15, 19, 20, 45, 55, 78];
    const fit = fitRobust(x.map((step, index) => ({ step, lengthMm: Math.exp(y[index] ?? 0) })));
    expect(fit?.slope).toBeCloseTo(4, 10);
  });

  it('does not move for one wrong size in eight', () => {
    const sizes = stepsOf(lengthsOf(1.5, [1.3, 1.3, 1.3, 1.3, 1.3, 1.3, 1.3]));
    const wrong = sizes.map((size, index) => (index === 2 ? { ...size, lengthMm: size.lengthMm * 10 } : size));
    expect(fitRobust(wrong)?.ratio).toBeCloseTo(1.3, 6);
    expect(Math.abs((fitGrowth(wrong)?.ratio ?? 0) - 1.3)).toBeGreaterThan(0.05);
  });

  it('is the median of the slopes that simple-statistics finds between the pairs of a published series', () => {
    const slopes = gracilis.flatMap((one, i) => gracilis.slice(i + 1).map((other, further) => Math.log(other / one) / (further + 1)));
    expect(fitRobust(stepsOf(gracilis))?.slope).toBeCloseTo(median(slopes), 10);
    expect(fitRobust(stepsOf([1, 2]))).toBeNull();
  });
});

describe('testCurvature', () => {
  it('finds the falling ratios of Aglaoctenus lagotis', () => {
    const curvature = testCurvature(stepsOf(lagotis));
    expect(curvature?.bends).toBe(true);
    expect(curvature?.quadratic).toBeLessThan(0);
    expect(curvature?.ratioChangePercent).toBeLessThan(0);
  });

  it('is the slope of ln r on the instar as jstat fits it, where readings are exact', () => {
    // ln r = b + c (2 n + 1): the slope of ln r on n is twice the quadratic term.
    const logRatios = logRatiosOf(lagotis);
    const model = jStat.models.ols(
      logRatios,
      logRatios.map((_, index) => [1, index]),
    );
    const curvature = testCurvature(stepsOf(lagotis, 1, 0));
    expect(2 * (curvature?.quadratic ?? 0)).toBeCloseTo(model.coef[1] ?? Number.NaN, 8);
    expect(2 * (curvature?.standardError ?? 0)).toBeCloseTo(model.t.se[1] ?? Number.NaN, 8);
    expect(curvature?.probability).toBeCloseTo(model.t.p[1] ?? Number.NaN, 6);
  });

  it('says nothing of three sizes, and that an exact progression keeps to its ratio', () => {
    expect(testCurvature(stepsOf([1, 1.3, 1.6]))).toBeNull();
    expect(testCurvature(stepsOf([8, 8, 8, 8, 8]))?.bends).toBe(false);
    expect(fitParabola(stepsOf([1, 1.3, 1.6]))).toBeNull();
  });
});

describe('bandsOf', () => {
  it('predicts the next skin as jstat and simple-statistics do from the single ln r, where readings are exact', () => {
    const lengths = [0.57, 0.87, 1.29, 1.89, 2.8]; // Montezano DG et al. (2019) J. Agric. Sci. 11(8), instars 2 to 6.
    const bands = bandsOf(stepsOf(lengths, 2, 0));
    expect(bands?.model).toBe('line');
    const logRatios = logRatiosOf(lengths);
    const n = logRatios.length;
    const [t, s] = [jStat.studentt.inv(0.975, n - 1), sampleStandardDeviation(logRatios)];
    const next = bands?.next;
    if (!next) throw new Error('Expected a prediction');
    expect(Math.log(next.middleMm / 2.8)).toBeCloseTo(mean(logRatios), 8);
    expect(Math.log(next.meanHigh95Mm / next.middleMm)).toBeCloseTo(t * s * Math.sqrt(1 / n), 6);
    expect(Math.log(next.oneHigh95Mm / next.middleMm)).toBeCloseTo(t * s * Math.sqrt(1 + 1 / n), 6);
    expect(Math.log(next.middleMm / next.oneLow95Mm)).toBeCloseTo(t * s * Math.sqrt(1 + 1 / n), 6);
    expect(bands.at.map(({ step }) => step)).toEqual([2, 3, 4, 5, 6, 7]);
  });

  it('says of a measured skin what its own reading says', () => {
    const at = bandsOf(stepsOf(gracilis, 1, 0.01))?.at[2];
    expect(at?.middleMm).toBeCloseTo(2.96, 10);
    expect(at?.meanHigh95Mm).toBeCloseTo(2.96 * Math.exp(0.02), 10);
    expect(at?.oneHigh95Mm).toBeCloseTo(2.96 * Math.exp(0.02 * Math.SQRT2), 10);
  });

  it('bridges a gap half way between the skins beside it, and is widest there and after the last', () => {
    const whole = lengthsOf(2, [1.3, 1.26, 1.33, 1.29, 1.31, 1.27]);
    const gapped = stepsOf(whole, 1, 0.002).filter(({ step }) => step !== 4);
    const bands = bandsOf(gapped);
    const width = (step: number) => {
      const band = bands?.at.find((one) => one.step === step);
      return band ? Math.log(band.oneHigh95Mm / band.oneLow95Mm) : Number.NaN;
    };
    expect(bands?.at.find(({ step }) => step === 4)?.middleMm).toBeCloseTo(Math.sqrt((whole[2] ?? 0) * (whole[4] ?? 0)), 2);
    expect(width(4)).toBeGreaterThan(5 * width(3));
    expect(width(8)).toBeGreaterThan(width(4));
  });

  it('holds the last instar of Centruroides gracilis in the prediction from those before', () => {
    const next = bandsOf(stepsOf(gracilis.slice(0, 6)))?.next;
    expect(next?.oneLow95Mm).toBeLessThan(8.16);
    expect(next?.oneHigh95Mm).toBeGreaterThan(8.16);
  });

  it('bends where the sizes do', () => {
    expect(bandsOf(stepsOf(lagotis))?.model).toBe('parabola');
  });

  it('covers gaps, needs three sizes, and has no width where nothing scatters', () => {
    expect(bandsOf(stepsOf([3, 4]))).toBeNull();
    const gapped = stepsOf(lengthsOf(2, [1.3, 1.3, 1.3, 1.3])).filter(({ step }) => step !== 3);
    expect(bandsOf(gapped)?.at.map(({ step }) => step)).toEqual([1, 2, 3, 4, 5, 6]);
    const equal = bandsOf(stepsOf([8, 8, 8], 1, 0));
    expect(equal?.next?.oneHigh95Mm).toBeCloseTo(8, 3);
  });
});
