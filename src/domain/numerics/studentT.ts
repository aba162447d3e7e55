import { betaFraction } from './betaFraction.ts';

/**
 * The t below which Student's t stays with the given probability, to about 1e-12 relative:
 * Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.7.1 with 26.5.27, inverted.
 *
 * @param probability strictly between 0 and 1; 0.975 gives the factor of a two-sided 95 % interval.
 * @param degreesOfFreedom finite and > 0; need not be whole.
 * @throws RangeError outside these ranges: a mistake of the caller.
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0 && Number.isFinite(degreesOfFreedom))) {
    throw new RangeError(`Expected degrees of freedom above 0, got ${degreesOfFreedom}`);
  }
  if (!(probability > 0 && probability < 1)) throw new RangeError(`Expected a probability between 0 and 1, got ${probability}`);
  if (probability === 0.5) return 0;
  return probability < 0.5 ? -upperQuantile(probability, degreesOfFreedom) : upperQuantile(1 - probability, degreesOfFreedom);
}

/**
 * P(|T| > |t|): what a two-sided test of a coefficient over its standard error reports (Abramowitz & Stegun 26.7.1).
 *
 * @param degreesOfFreedom finite and > 0.
 * @throws RangeError when they are not: a mistake of the caller.
 */
export function studentTTwoSided(t: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0 && Number.isFinite(degreesOfFreedom)) || Number.isNaN(t)) {
    throw new RangeError(`Expected a t and degrees of freedom above 0, got ${t} and ${degreesOfFreedom}`);
  }
  return t === 0 ? 1 : Math.min(1, 2 * upperTail(Math.abs(t), degreesOfFreedom));
}

/** The t > 0 with probability `tail` above it: bracketed, halved to where Newton is safe, finished by Newton. */
function upperQuantile(tail: number, degrees: number): number {
  let low = 0;
  let high = 1;
  while (upperTail(high, degrees) > tail) {
    low = high;
    high *= 2;
  }
  for (let step = 0; step < 30; step += 1) {
    const middle = (low + high) / 2;
    if (upperTail(middle, degrees) > tail) low = middle;
    else high = middle;
  }
  let t = (low + high) / 2;
  for (let step = 0; step < 3; step += 1) t += (upperTail(t, degrees) - tail) / density(t, degrees);
  return t;
}

function density(t: number, degrees: number): number {
  const constant = halfGammaRatio(degrees / 2) / Math.sqrt(degrees * Math.PI);
  return constant * Math.exp((-(degrees + 1) / 2) * Math.log1p((t * t) / degrees));
}

/** P(T > t) for t >= 0: half of the regularized incomplete beta function I_x(degrees / 2, 1 / 2) at x = degrees / (degrees + t^2). */
function upperTail(t: number, degrees: number): number {
  if (t === 0) return 0.5;
  const a = degrees / 2;
  const x = degrees / (degrees + t * t);
  const complement = (t * t) / (degrees + t * t);
  // x^a (1-x)^(1/2) / B(a, 1/2), with x^a through log1p because x is near 1 for many degrees of freedom.
  const front = (Math.exp(-a * Math.log1p((t * t) / degrees)) * Math.sqrt(complement) * halfGammaRatio(a)) / Math.sqrt(Math.PI);
  const converging = x < (a + 1) / (a + 2.5);
  return converging ? (0.5 * front) / a / betaFraction(x, a, 0.5) : 0.5 - front / betaFraction(complement, 0.5, a);
}

/** Gamma(a + 1/2) / Gamma(a) for a > 0: recurrence up to where the asymptotic series (Abramowitz & Stegun 6.1.47) is exact to rounding. */
function halfGammaRatio(a: number): number {
  let factor = 1;
  let shifted = a;
  while (shifted < 40) {
    factor *= shifted / (shifted + 0.5);
    shifted += 1;
  }
  const inverse = 1 / shifted;
  const series = inverse * (-1 / 8 + inverse ** 2 * (1 / 192 + inverse ** 2 * (-1 / 640 + inverse ** 2 * (17 / 14_336))));
  return factor * Math.sqrt(shifted) * Math.exp(series);
}
