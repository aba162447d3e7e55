/** The part of jstat the checks use; the package brings no types. */
declare module 'jstat' {
  export const jStat: {
    readonly normal: { cdf(x: number, mean: number, standardDeviation: number): number };
    readonly studentt: {
      cdf(x: number, degreesOfFreedom: number): number;
      inv(probability: number, degreesOfFreedom: number): number;
    };
  };
}
