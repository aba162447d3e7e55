/** What is foretold of a logarithm: its mean, its whole variance, and how surely the variance is known. */
export interface PredictiveLaw {
  readonly location: number;
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

/** The scatter of single steps of one animal, and what its estimate is worth. */
export interface Scatter {
  readonly scatterVariance: number;
  readonly degreesOfFreedom: number;
}

/**
 * Scatter and whatever else is uncertain together. Only the scatter is an estimate with few degrees of freedom; beside other
 * parts of the variance it counts the less (Welch 1947, Biometrika 34:28-35, and Satterthwaite 1946, Biometrics 2:110-114, as
 * in JCGM 100:2008, G.4.1).
 *
 * @param steps how many the scatter is summed over.
 * @param otherVariance of the line, of dates, of readings; zero or more.
 */
export function predictiveLaw(location: number, scatter: Scatter, steps: number, otherVariance: number): PredictiveLaw {
  const scattered = steps * scatter.scatterVariance;
  const variance = scattered + otherVariance;
  return { location, variance, degreesOfFreedom: scatter.degreesOfFreedom * (variance / scattered) ** 2 };
}

/**
 * Scale of a Student's t with the law's variance, which is the square of its scale times v / (v - 2): a scatter that is a mean
 * over animals, some of which scatter more, holds the heavy tails of Student's t already.
 */
export function scaleOf({ variance, degreesOfFreedom }: PredictiveLaw): number {
  return Math.sqrt((variance * (degreesOfFreedom - 2)) / degreesOfFreedom);
}
