import { DORSAL_SKIN_PROTOCOL } from '../../../src/domain/measuring/landmarks.ts';
import type { ReadingDraft } from '../../../src/domain/measuring/reading.ts';
import { EMPTY_READING } from '../emptyReading.ts';

/** What the killed program saves as the given version of a reading: every point differs from version to version. */
export function readingSavedAs(version: number): ReadingDraft {
  const landmarks = DORSAL_SKIN_PROTOCOL.map((name, index) => [
    name,
    { state: 'placed', at: { xPx: version + index / 64, yPx: 2 * version + index / 128 } },
  ]);
  return { ...EMPTY_READING, observer: `version ${version}`, pass: 1, landmarks: Object.fromEntries(landmarks) };
}
