/**
 * Continued fraction of the incomplete beta function (Abramowitz & Stegun 26.5.8), by the modified Lentz method:
 * I_x(a, b) = x^a (1-x)^b / (a B(a, b)) / fraction, quick for x < (a + 1) / (a + b + 2).
 */
export function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let fraction = 1;
  let c = 1;
  let d = 0;
  for (let term = 1; term <= 20_000; term += 1) {
    const m = term >> 1;
    const coefficient =
      term % 2 === 0 ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)) : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + coefficient * d || tiny);
    c = 1 + coefficient / c || tiny;
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return fraction;
}
