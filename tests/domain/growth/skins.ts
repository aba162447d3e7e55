import type { MoltOnRecord } from '../../../src/domain/growth/ladder.ts';
import type { SkinReading } from '../../../src/domain/growth/skinSizes.ts';
import { type AbsentQuantity, estimateFrom, type Quantity } from '../../../src/domain/measuring/quantity.ts';

/** One measured quantity in millimeters, with an empty budget unless told otherwise. */
export function quantity(name: string, valueMm: number, uncertaintyMm: number, more: Partial<Quantity> = {}): Quantity {
  return { name, unit: 'mm', estimate: estimateFrom(valueMm, uncertaintyMm), flags: [], budget: [], heightCorrection: null, ...more };
}

export function skinReading(photoId: string, quantities: readonly Quantity[], absent: readonly AbsentQuantity[] = []): SkinReading {
  return {
    readingId: `reading-of-${photoId}`,
    photoId,
    measurement: { quantities: [...quantities], absent: [...absent] },
    doubts: [],
    isScaleDoubted: false,
  };
}

/** A molt on one day whose skin has one dorsal photo, measured when a carapace length is given. */
export function moltOn(day: string, instarShed: number | null, carapaceLengthMm: number | null, uncertaintyMm = 0.1): MoltOnRecord {
  const photoId = `photo-${day}`;
  return {
    molt: { id: `molt-${day}`, happenedFrom: day, happenedTo: day, instarShed, outcomes: [] },
    exuvia: { id: `skin-${day}`, recovered: true },
    photos: [{ id: photoId, view: 'dorsal', subject: { kind: 'skin', exuviaId: `skin-${day}` } }],
    readings: carapaceLengthMm === null ? [] : [skinReading(photoId, [quantity('carapace-length', carapaceLengthMm, uncertaintyMm)])],
  };
}
