/** A round length, 1, 2 or 5 times a power of ten, as long as fits into a longest one. */
export function roundLengthMm(longestMm: number): number {
  const power = 10 ** Math.floor(Math.log10(longestMm));
  const mantissa = [5, 2, 1].find((figure) => figure * power <= longestMm) ?? 1;
  return Number((mantissa * power).toPrecision(1));
}
