/** The part of jstat the checks use; the package brings no types. */
declare module 'jstat' {
  export const jStat: {
    readonly normal: {
      cdf(x: number, mean: number, standardDeviation: number): number;
      inv(probability: number, mean: number, standardDeviation: number): number;
    };
    readonly lognormal: {
      cdf(x: number, location: number, scale: number): number;
      inv(probability: number, location: number, scale: number): number;
    };
    readonly chisquare: { cdf(x: number, degreesOfFreedom: number): number };
    readonly beta: { inv(probability: number, alpha: number, beta: number): number; cdf(x: number, alpha: number, beta: number): number };
    readonly models: {
      ols(
        observed: readonly number[],
        design: readonly (readonly number[])[],
      ): {
        readonly coef: readonly number[];
        readonly t: { readonly se: readonly number[]; readonly p: readonly number[] };
      };
    };
    readonly studentt: {
      cdf(x: number, degreesOfFreedom: number): number;
      inv(probability: number, degreesOfFreedom: number): number;
      variance(degreesOfFreedom: number): number;
    };
  };
}
