import { DORSAL_SKIN_PROTOCOL, pointOf } from './landmarks.ts';
import type { ReadingDraft } from './reading.ts';

/** How well clicks repeat, from several passes over one photo. */
export interface PointingFromRepeats {
  /** Pooled standard deviation of one click, per coordinate, px. */
  readonly pointingPx: number;
  readonly degreesOfFreedom: number;
}

/** With fewer, the standard deviation itself is uncertain by more than a quarter (JCGM 100:2008, E.4.3). */
const LEAST_DEGREES_OF_FREEDOM = 8;

/**
 * Pools the scatter of every landmark that was placed in two or more passes, about its own mean.
 *
 * @param readings all of the same photo.
 * @returns null when there are too few repeats to say, or all of them agree exactly (copies say nothing about scatter).
 */
export function pointingFromRepeats(readings: readonly Pick<ReadingDraft, 'landmarks'>[]): PointingFromRepeats | null {
  let sumOfSquares = 0;
  let degreesOfFreedom = 0;
  for (const name of DORSAL_SKIN_PROTOCOL) {
    const points = readings.map(({ landmarks }) => pointOf(landmarks[name])).filter((point) => point !== null);
    if (points.length < 2) continue;
    const meanX = points.reduce((sum, point) => sum + point.xPx, 0) / points.length;
    const meanY = points.reduce((sum, point) => sum + point.yPx, 0) / points.length;
    sumOfSquares += points.reduce((sum, point) => sum + (point.xPx - meanX) ** 2 + (point.yPx - meanY) ** 2, 0);
    degreesOfFreedom += 2 * (points.length - 1);
  }
  if (degreesOfFreedom < LEAST_DEGREES_OF_FREEDOM || sumOfSquares === 0) return null;
  return { pointingPx: Math.sqrt(sumOfSquares / degreesOfFreedom), degreesOfFreedom };
}
