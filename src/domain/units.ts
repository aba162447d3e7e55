/** Exactly 25.4 mm to the inch (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;

export function inchesFromMm(lengthMm: number): number {
  return lengthMm / MM_PER_INCH;
}

export function mmFromInches(lengthInches: number): number {
  return lengthInches * MM_PER_INCH;
}
