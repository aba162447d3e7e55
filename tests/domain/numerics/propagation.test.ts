import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../src/domain/numerics/leastSquares.ts';
import { contribution, covarianceOf, curvature, meanSquareDeviation } from '../../../src/domain/numerics/propagation.ts';
import { studentTQuantile } from '../../../src/domain/numerics/studentT.ts';

interface UncertainInput {
  readonly estimate: number;
  readonly standardUncertainty: number;
}

interface PropagatedResult {
  readonly value: number;
  readonly standardUncertainty: number;
  /** c u of each input, signed. */
  readonly contributions: readonly number[];
}

/** Plain numbers through a model: each moved by its standard uncertainty, as measuring moves corners and clicks. */
function propagate(
  model: (inputs: readonly number[]) => number,
  inputs: readonly UncertainInput[],
  correlations?: readonly (readonly number[])[],
): PropagatedResult {
  const estimates = inputs.map((input) => input.estimate);
  const contributions = inputs.map(({ estimate, standardUncertainty }, index) =>
    contribution(model, {
      below: estimates.with(index, estimate - standardUncertainty),
      above: estimates.with(index, estimate + standardUncertainty),
    }),
  );
  return {
    value: model(estimates),
    standardUncertainty: Math.sqrt(covarianceOf(contributions, contributions, correlations)),
    contributions,
  };
}

/** JCGM 100:2008, annex H.1: calibration of an end gauge; lengths in nm, inputs as printed in table H.1. */
describe('GUM example H.1', () => {
  const standardNm = 50_000_623;
  const inputs = [
    { estimate: standardNm, standardUncertainty: 25 },
    { estimate: 215, standardUncertainty: 9.7 },
    { estimate: 11.5e-6, standardUncertainty: 1.2e-6 },
    { estimate: -0.1, standardUncertainty: 0.41 },
    { estimate: 0, standardUncertainty: 0.58e-6 },
    { estimate: 0, standardUncertainty: 0.029 },
  ];
  const length = ([
    standard = 0,
    difference = 0,
    expansion = 0,
    temperature = 0,
    expansionGap = 0,
    temperatureGap = 0,
  ]: readonly number[]): number => standard + difference - standard * (expansionGap * temperature + expansion * temperatureGap);
  const result = propagate(length, inputs);

  it('gives the printed length and combined standard uncertainty', () => {
    expect(result.value).toBe(50_000_838);
    expect(Math.round(result.standardUncertainty)).toBe(32);
    expect(result.standardUncertainty).toBeCloseTo(31.71, 2);
  });

  it('gives the printed contributions', () => {
    const [standard = 0, difference = 0, expansion = 0, temperature = 0, expansionGap = 0, temperatureGap = 0] = result.contributions.map(
      Math.abs,
    );
    expect(standard).toBeCloseTo(25, 6);
    expect(difference).toBeCloseTo(9.7, 6);
    expect(expansion).toBe(0);
    expect(temperature).toBe(0);
    expect(expansionGap).toBeCloseTo(2.9, 1);
    expect(temperatureGap).toBeCloseTo(16.675, 2);
  });

  it('gives the printed expanded uncertainty of 93 nm at 99 % with 16 effective degrees of freedom', () => {
    const degrees = [18, 25.6, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 50, 2];
    const sum = result.contributions.reduce((total, part, index) => total + part ** 4 / (degrees[index] ?? Number.NaN), 0);
    const effective = Math.floor(result.standardUncertainty ** 4 / sum);
    expect(effective).toBe(16);
    expect(studentTQuantile(0.995, effective)).toBeCloseTo(2.92, 2);
    expect(Math.round(studentTQuantile(0.995, effective) * result.standardUncertainty)).toBe(93);
  });
});

/** JCGM 100:2008, annex H.2: resistance, reactance and impedance from five simultaneous readings. */
describe('GUM example H.2', () => {
  const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
  const amperes = [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3];
  const phases = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const readings = [volts, amperes, phases];
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const covarianceOfMeans = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, index) => sum + (value - mean(a)) * ((b[index] ?? Number.NaN) - mean(b)), 0) / (a.length * (a.length - 1));
  const inputs = readings.map((values) => ({ estimate: mean(values), standardUncertainty: Math.sqrt(covarianceOfMeans(values, values)) }));
  const correlations = readings.map((a) =>
    readings.map((b) => covarianceOfMeans(a, b) / Math.sqrt(covarianceOfMeans(a, a) * covarianceOfMeans(b, b))),
  );
  const resistance = propagate(([v = 0, i = 0, phase = 0]) => (v / i) * Math.cos(phase), inputs, correlations);
  const reactance = propagate(([v = 0, i = 0, phase = 0]) => (v / i) * Math.sin(phase), inputs, correlations);
  const impedance = propagate(([v = 0, i = 0]) => v / i, inputs, correlations);
  const correlation = (a: typeof resistance, b: typeof resistance): number =>
    covarianceOf(a.contributions, b.contributions, correlations) / (a.standardUncertainty * b.standardUncertainty);

  it('gives the printed correlations of the inputs', () => {
    expect(correlations[0]?.[1]).toBeCloseTo(-0.36, 2);
    expect(correlations[0]?.[2]).toBeCloseTo(0.86, 2);
    expect(correlations[1]?.[2]).toBeCloseTo(-0.65, 2);
  });

  it('gives the printed results and uncertainties', () => {
    expect(resistance.value).toBeCloseTo(127.732, 3);
    expect(resistance.standardUncertainty).toBeCloseTo(0.071, 3);
    expect(reactance.value).toBeCloseTo(219.847, 3);
    // Printed 0.295; unrounded 0.29558.
    expect(reactance.standardUncertainty).toBeCloseTo(0.29558, 4);
    expect(impedance.value).toBeCloseTo(254.26, 3);
    expect(impedance.standardUncertainty).toBeCloseTo(0.236, 3);
  });

  it('gives the printed correlations of the results', () => {
    expect(correlation(resistance, reactance)).toBeCloseTo(-0.588, 3);
    expect(correlation(resistance, impedance)).toBeCloseTo(-0.485, 3);
    expect(correlation(reactance, impedance)).toBeCloseTo(0.993, 3);
  });

  it('would be far off without the correlations of the inputs', () => {
    const independent = propagate(([v = 0, i = 0, phase = 0]) => (v / i) * Math.cos(phase), inputs);
    expect(independent.standardUncertainty).toBeGreaterThan(0.15);
  });
});

/** JCGM 100:2008, annex H.3: calibration of a thermometer by a straight line. */
describe('GUM example H.3', () => {
  const temperatures = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const fit = leastSquares(
    temperatures.map((temperature) => [1, temperature - 20]),
    corrections,
  );
  const [[interceptVariance = 0, covariance = 0] = [], [, slopeVariance = 0] = []] = fit.covariance;
  const inputs = fit.coefficients.map((estimate, index) => ({ estimate, standardUncertainty: fit.standardErrors[index] ?? Number.NaN }));
  const r = covariance / Math.sqrt(interceptVariance * slopeVariance);
  const correctionAt30 = ([intercept = 0, slope = 0]: readonly number[]): number => intercept + slope * 10;

  it('gives the printed line and its uncertainties', () => {
    expect(fit.coefficients[0]).toBeCloseTo(-0.1712, 4);
    expect(fit.standardErrors[0]).toBeCloseTo(0.0029, 4);
    expect(fit.coefficients[1]).toBeCloseTo(0.00218, 5);
    expect(fit.standardErrors[1]).toBeCloseTo(0.00067, 5);
    expect(r).toBeCloseTo(-0.93, 3);
    expect(fit.residualStandardDeviation).toBeCloseTo(0.0035, 4);
    expect(fit.degreesOfFreedom).toBe(9);
  });

  it('gives the printed correction at 30 degrees with its uncertainty, correlation included', () => {
    const result = propagate(correctionAt30, inputs, [
      [1, r],
      [r, 1],
    ]);
    expect(result.value).toBeCloseTo(-0.1494, 4);
    expect(result.standardUncertainty).toBeCloseTo(0.0041, 4);
    expect(propagate(correctionAt30, inputs).standardUncertainty).toBeCloseTo(0.00727, 5);
  });
});

describe('second-order terms', () => {
  it('give the mean square of a quadratic of normal inputs where the first order vanishes', () => {
    // f = x^2 with x normal about 0, standard deviation 1: E[f^2] = 3 (moments of the normal distribution).
    const square = (x: number): number => x * x;
    const excursion = { below: -1, above: 1 };
    expect(contribution(square, excursion)).toBe(0);
    expect(meanSquareDeviation([contribution(square, excursion)], [curvature(square, 0, excursion)])).toBe(3);
  });
});
