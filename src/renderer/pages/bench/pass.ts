import type { Reading } from '../../../domain/measuring/reading.ts';
import type { Stored } from '../../bench/saving.ts';

/** One pass over one photo: by whom, which, and what is stored of it so far. */
export interface Pass {
  readonly observer: string;
  readonly pass: number;
  readonly reading: Reading | null;
}

export function storedReading({
  protocol,
  observer,
  pass,
  carapaceHeight,
  pointingPx,
  landmarks,
  id,
  version,
}: Reading): NonNullable<Stored['reading']> {
  return { id, version, draft: { protocol, observer, pass, carapaceHeight, pointingPx, landmarks } };
}
