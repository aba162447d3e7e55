import { betaFraction } from './betaFraction.ts';

/** Coefficients of the Lanczos approximation for g = 7 and nine terms; from memory, checked against a library to 1e-13. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** ln Gamma(x) for x >= 1 / 2 (Lanczos 1964, SIAM J. Numer. Anal. B 1:86-96). */
function logGamma(x: number): number {
  const shifted = x - 1;
  const base = shifted + 7.5;
  const series = LANCZOS.reduce((sum, coefficient, term) => (term === 0 ? coefficient : sum + coefficient / (shifted + term)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(base) - base + Math.log(series);
}

/** The regularized incomplete beta function I_x(a, b) for a, b >= 1 / 2 and 0 <= x <= 1 (Abramowitz & Stegun 26.5.8). */
export function betaProbability(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? front / a / betaFraction(x, a, b) : 1 - front / b / betaFraction(1 - x, b, a);
}

/** The x with I_x(a, b) = probability, halved to the last bit. @throws RangeError for a probability outside 0 to 1. */
export function betaQuantile(probability: number, a: number, b: number): number {
  if (!(probability >= 0 && probability <= 1)) throw new RangeError(`Expected a probability from 0 to 1, got ${probability}`);
  let low = 0;
  let high = 1;
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (betaProbability(middle, a, b) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
