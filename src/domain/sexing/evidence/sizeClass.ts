import { z } from 'zod';
import type { ModelNumbers } from './numbers.ts';

/** From the smallest skins to the largest; how much a strip can show depends on it. */
export const SizeClass = z.enum(['A', 'B', 'C', 'D']).meta({ id: 'SizeClass' });
export type SizeClass = z.infer<typeof SizeClass>;

export interface SizesForClass {
  readonly legSpanMm: number | null;
  readonly carapaceMm: number | null;
  /** Carapace of an adult female of the genus, where the keeper has said it. */
  readonly adultCarapaceMm: number | null;
}

/**
 * The size class of a skin: absolute, by leg span and by carapace, and relative to the adult size; the worst of those known
 * counts. Null when nothing is known of the size.
 */
export function sizeClassOf({ legSpanMm, carapaceMm, adultCarapaceMm }: SizesForClass, numbers: ModelNumbers): SizeClass | null {
  const relative = carapaceMm !== null && adultCarapaceMm !== null ? carapaceMm / adultCarapaceMm : null;
  const known = [
    classIn(legSpanMm, numbers['span.fromB'], numbers['span.fromC'], numbers['span.aboveD']),
    classIn(carapaceMm, numbers['carapace.fromB'], numbers['carapace.fromC'], numbers['carapace.aboveD']),
    classIn(relative, numbers['relative.fromB'], numbers['relative.fromC'], numbers['relative.aboveD']),
  ].filter((found) => found !== null);
  return known.toSorted().at(0) ?? null;
}

/** The lower limits belong to the class above them, the upper limit of C to C: "over 7.5 cm" is D. */
function classIn(size: number | null, fromB: number, fromC: number, aboveD: number): SizeClass | null {
  if (size === null) return null;
  if (size < fromB) return 'A';
  if (size < fromC) return 'B';
  return size <= aboveD ? 'C' : 'D';
}
