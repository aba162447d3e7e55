import type { SheetPlate } from './sheet.ts';

/** One frame in which any of several plates can stand, the carapace middle always at the same place. */
export interface PlateFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly carapaceFromLeftMm: number;
  readonly carapaceAtMm: number;
}

/** The smallest one that holds each of the plates. @param plates at least one. */
export function frameAround(plates: readonly SheetPlate[]): PlateFrame {
  const carapaceFromLeftMm = Math.max(...plates.map((plate) => plate.carapaceFromLeftMm));
  const carapaceAtMm = Math.max(...plates.map((plate) => plate.carapaceAtMm));
  return {
    carapaceFromLeftMm,
    carapaceAtMm,
    widthMm: carapaceFromLeftMm + Math.max(...plates.map((plate) => plate.widthMm - plate.carapaceFromLeftMm)),
    heightMm: carapaceAtMm + Math.max(...plates.map((plate) => plate.heightMm - plate.carapaceAtMm)),
  };
}
