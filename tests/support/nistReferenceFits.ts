/**
 * NIST Statistical Reference Datasets, linear least squares: Norris, Pontius and Longley with their certified values
 * (https://www.itl.nist.gov/div898/strd/lls/lls.shtml).
 */

export interface ReferenceFit {
  readonly design: readonly (readonly number[])[];
  readonly observed: readonly number[];
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residualStandardDeviation: number;
  readonly residualSumOfSquares: number;
  readonly rSquared: number;
}

/** Correct digits: -log10 of the relative difference, at most 15. */
export function logRelativeError(computed: number, certified: number): number {
  return Math.min(15, -Math.log10(Math.abs((computed - certified) / certified)));
}

const NORRIS_PAIRS: readonly (readonly [number, number])[] = [
  [0.2, 0.1],
  [337.4, 338.8],
  [118.2, 118.1],
  [884.6, 888.0],
  [10.1, 9.2],
  [226.5, 228.1],
  [666.3, 668.5],
  [996.3, 998.5],
  [448.6, 449.1],
  [777.0, 778.9],
  [558.2, 559.2],
  [0.4, 0.3],
  [0.6, 0.1],
  [775.5, 778.1],
  [666.9, 668.8],
  [338.0, 339.3],
  [447.5, 448.9],
  [11.6, 10.8],
  [556.0, 557.7],
  [228.1, 228.3],
  [995.8, 998.0],
  [887.6, 888.8],
  [120.2, 119.6],
  [0.3, 0.3],
  [0.3, 0.6],
  [556.8, 557.6],
  [339.1, 339.3],
  [887.2, 888.0],
  [999.0, 998.5],
  [779.0, 778.9],
  [11.1, 10.2],
  [118.3, 117.6],
  [229.2, 228.9],
  [669.1, 668.4],
  [448.9, 449.2],
  [0.5, 0.2],
];

export const NORRIS: ReferenceFit = {
  design: NORRIS_PAIRS.map(([x]) => [1, x]),
  observed: NORRIS_PAIRS.map(([, y]) => y),
  coefficients: [-0.262323073774029, 1.00211681802045],
  standardErrors: [0.232818234301152, 0.429796848199937e-3],
  residualStandardDeviation: 0.884796396144373,
  residualSumOfSquares: 26.6173985294224,
  rSquared: 0.999993745883712,
};

const PONTIUS_OBSERVED: readonly number[] = [
  0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146, 1.20001, 1.30822, 1.41599, 1.52399, 1.63194,
  1.73947, 1.84646, 1.95392, 2.06128, 2.16844, 0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739, 0.76596, 0.87474, 0.983, 1.0915,
  1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829,
];

export const PONTIUS: ReferenceFit = {
  design: PONTIUS_OBSERVED.map((_, index) => {
    const x = 150_000 * ((index % 20) + 1);
    return [1, x, x * x];
  }),
  observed: PONTIUS_OBSERVED,
  coefficients: [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14],
  standardErrors: [0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16],
  residualStandardDeviation: 0.205177424076185e-3,
  residualSumOfSquares: 0.155761768796992e-5,
  rSquared: 0.999999900178537,
};

/** Employment, then the six predictors. */
const LONGLEY_ROWS: readonly (readonly [number, ...number[]])[] = [
  [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
  [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
  [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
  [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
  [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
  [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
  [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
  [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
  [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
  [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
  [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
  [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
  [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
  [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
  [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
  [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
];

export const LONGLEY: ReferenceFit = {
  design: LONGLEY_ROWS.map(([, ...predictors]) => [1, ...predictors]),
  observed: LONGLEY_ROWS.map(([employed]) => employed),
  coefficients: [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359, -0.0511041056535807, 1829.15146461355,
  ],
  standardErrors: [
    890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.22607320006937, 455.478499142212,
  ],
  residualStandardDeviation: 304.854073561965,
  residualSumOfSquares: 836424.055505915,
  rSquared: 0.995479004577296,
};
