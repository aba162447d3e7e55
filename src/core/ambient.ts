import { createHash, randomUUID } from 'node:crypto';
import type { Ambient } from '../domain/ambient.ts';

export interface AmbientOptions {
  /** First moment the clock shows; null for the machine's clock. */
  readonly now: string | null;
  /** Makes the identifiers repeatable; null for random ones. */
  readonly seed: string | null;
}

/** For a word from the command line. @throws TypeError with a sentence for the person at the terminal. */
export function checkedNow(word: string): string {
  if (Number.isNaN(Date.parse(word))) throw new TypeError(`Expected --now to be a moment such as 2026-01-01T12:00Z but received ${word}`);
  return word;
}

export interface CoreAmbient extends Ambient {
  /** How many records the archive has ever made, told before the first identifier: repeatable ones are others after each. */
  startAfter(recordsMade: number): void;
}

/** A chosen clock starts at `now` and moves one millisecond each time it is read, so that what came later is also dated later. */
export function createAmbient({ now, seed }: AmbientOptions): CoreAmbient {
  let readings = 0;
  let before = 0;
  let made = 0;
  return {
    now: now === null ? () => new Date().toISOString() : () => new Date(Date.parse(now) + readings++).toISOString(),
    newId: seed === null ? randomUUID : () => uuidFrom(`${before} ${made++} ${seed}`),
    startAfter(recordsMade) {
      before = recordsMade;
    },
  };
}

/** A version 8 UUID, the one for values made by the vendor's own rule (RFC 9562, 5.8). */
function uuidFrom(text: string): string {
  const hex = createHash('sha256').update(text).digest('hex');
  const variant = ((Number.parseInt(hex.slice(16, 17), 16) & 0x3) | 0x8).toString(16);
  return [hex.slice(0, 8), hex.slice(8, 12), `8${hex.slice(13, 16)}`, `${variant}${hex.slice(17, 20)}`, hex.slice(20, 32)].join('-');
}
