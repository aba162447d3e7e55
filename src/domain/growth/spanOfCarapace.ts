/**
 * A leg span in carapace lengths. Described specimens have 5.2 to 7.5 in their legs I and IV alone (sources at `care/spanNow.ts`), and up
 * to one more for the body between them. Twice as wide on either side is own judgment: legs are bent, genera differ, hands err.
 */
const SPANS_PER_CARAPACE = { least: 2.6, most: 17 } as const;

/** Whether a leg span and a carapace length can be those of one animal, or of one skin. */
export function isSpanLikely(legSpanMm: number, carapaceLengthMm: number): boolean {
  const ratio = legSpanMm / carapaceLengthMm;
  return ratio >= SPANS_PER_CARAPACE.least && ratio <= SPANS_PER_CARAPACE.most;
}
