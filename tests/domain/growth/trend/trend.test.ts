import { jStat } from 'jstat';
import { linearRegression } from 'simple-statistics';
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

describe('fitWeighted', () => {
  it.each(publishedSeries)('is the plain fit of $what where all are read equally well', ({ lengthsMm, firstInstar, expected }) => {
    const fit = fitWeighted(stepsOf(lengthsMm, firstInstar, 0.001));
    expect(fit?.ratio.toFixed(4)).toBe(expected.ratio);
    const plain = fitGrowth(stepsOf(lengthsMm, firstInstar));
    expect(fit?.ratioLow95).toBeCloseTo(plain?.ratioLow95 ?? Number.NaN, 4);
    expect(Math.hypot(fit?.excessScatter ?? 0, 0.001)).toBeCloseTo(plain?.residualStandardDeviation ?? Number.NaN, 5);
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
    expect(exact?.excessScatter).toBe(0);
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

  it('lies near the least squares of a clean published series', () => {
    expect(fitRobust(stepsOf(gracilis))?.ratio).toBeCloseTo(1.3128, 1);
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

  it('agrees with the model fitted by jstat', () => {
    const sizes = stepsOf(lagotis);
    const model = jStat.models.ols(
      sizes.map(({ lengthMm }) => Math.log(lengthMm)),
      sizes.map(({ step }) => [1, step, step * step]),
    );
    const curvature = testCurvature(sizes);
    expect(curvature?.quadratic).toBeCloseTo(model.coef[2] ?? Number.NaN, 8);
    expect(curvature?.standardError).toBeCloseTo(model.t.se[2] ?? Number.NaN, 8);
    expect(curvature?.probability).toBeCloseTo(model.t.p[2] ?? Number.NaN, 6);
  });

  it('says nothing of three sizes or of an exact progression', () => {
    expect(testCurvature(stepsOf([1, 1.3, 1.6]))).toBeNull();
    expect(testCurvature(stepsOf([8, 8, 8, 8, 8]))).toBeNull();
    expect(fitParabola(stepsOf([1, 1.3, 1.6]))).toBeNull();
  });
});

describe('bandsOf', () => {
  it('gives the prediction interval that simple-statistics and jstat give', () => {
    const sizes = stepsOf([0.35, 0.57, 0.87, 1.29, 1.89, 2.8].slice(1), 2); // Montezano DG et al. (2019) J. Agric. Sci. 11(8), instars 2 to 6.
    const bands = bandsOf(sizes);
    expect(bands?.model).toBe('line');
    const points = sizes.map(({ step, lengthMm }) => [step, Math.log(lengthMm)]);
    const { m, b } = linearRegression(points);
    const n = points.length;
    const mean = sizes.reduce((sum, { step }) => sum + step, 0) / n;
    const square = sizes.reduce((sum, { step }) => sum + (step - mean) ** 2, 0);
    const s = Math.sqrt(sizes.reduce((sum, { step, lengthMm }) => sum + (Math.log(lengthMm) - b - m * step) ** 2, 0) / (n - 2));
    const t = jStat.studentt.inv(0.975, n - 2);
    for (const band of bands?.at ?? []) {
      const leverage = 1 / n + (band.step - mean) ** 2 / square;
      expect(Math.log(band.middleMm)).toBeCloseTo(b + m * band.step, 10);
      expect(Math.log(band.meanHigh95Mm / band.middleMm)).toBeCloseTo(t * s * Math.sqrt(leverage), 7);
      expect(Math.log(band.oneHigh95Mm / band.middleMm)).toBeCloseTo(t * s * Math.sqrt(1 + leverage), 7);
      expect(Math.log(band.middleMm / band.oneLow95Mm)).toBeCloseTo(t * s * Math.sqrt(1 + leverage), 7);
    }
    expect(bands?.at.map(({ step }) => step)).toEqual([2, 3, 4, 5, 6, 7]);
    expect(bands?.next?.step).toBe(7);
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
    const equal = bandsOf(stepsOf([8, 8, 8]));
    expect(equal?.next?.oneHigh95Mm).toBeCloseTo(8, 10);
  });
});
