import type { LandmarkName } from './landmarks.ts';

/** How well a point is placed. */
export interface PointingError {
  /** Standard uncertainty per coordinate. */
  readonly pointingPx: number;
  /** That repeats give it; infinity where it is assumed or comes from the point itself (JCGM 100:2008, G.4.3). */
  readonly degreesOfFreedom: number;
}

/** One for all points, or each point's own. Points whose error is one estimate from the same repeats share one object. */
export type GivenPointing = number | ((name: LandmarkName) => PointingError);

/** An error that is taken as known. */
export function knownPointing(pointingPx: number): PointingError {
  return { pointingPx, degreesOfFreedom: Number.POSITIVE_INFINITY };
}

/** Of one landmark. A point that was found on an edge knows how well; what repeats say of the hand does not hold for it. */
export function pointingOf(name: LandmarkName, foundPx: number | undefined, given: GivenPointing): PointingError {
  if (foundPx !== undefined) return knownPointing(foundPx);
  return typeof given === 'number' ? knownPointing(given) : given(name);
}
