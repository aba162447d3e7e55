/**
 * P(chi^2 > x) with the given degrees of freedom: the upper incomplete gamma function Q(degrees / 2, x / 2), by its series
 * below and its continued fraction above the mean (Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.4.19
 * with 6.5.29 and 6.5.31), to about 1e-12.
 *
 * @param x >= 0.
 * @param degreesOfFreedom whole and >= 1.
 * @throws RangeError outside these ranges: a mistake of the caller.
 */
export function chiSquareTail(x: number, degreesOfFreedom: number): number {
  if (!(Number.isInteger(degreesOfFreedom) && degreesOfFreedom >= 1)) {
    throw new RangeError(`Expected whole degrees of freedom above 0, got ${degreesOfFreedom}`);
  }
  if (!(x >= 0)) throw new RangeError(`Expected a chi-square of 0 or more, got ${x}`);
  if (x === 0) return 1;
  if (x === Number.POSITIVE_INFINITY) return 0;
  const a = degreesOfFreedom / 2;
  const half = x / 2;
  const front = Math.exp(a * Math.log(half) - half - logGammaOfHalves(degreesOfFreedom));
  return half < a + 1 ? 1 - front * lowerSeries(a, half) : front * upperFraction(a, half);
}

/** ln Gamma(degrees / 2), by recurrence from Gamma(1/2) = sqrt(pi) or Gamma(1) = 1. */
function logGammaOfHalves(degrees: number): number {
  let log = degrees % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let twice = degrees % 2 === 0 ? 2 : 1; twice < degrees; twice += 2) log += Math.log(twice / 2);
  return log;
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; term > sum * 1e-16; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** By the modified Lentz method; all its partial denominators stay above zero for x > a. */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Number.POSITIVE_INFINITY;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n <= 1000; n += 1) {
    const numerator = n * (a - n);
    b += 2;
    d = 1 / (b + numerator * d);
    c = b + numerator / c;
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return fraction;
}
