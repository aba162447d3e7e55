import { pointOnEdgePx } from './edgeDefinition.ts';
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

/**
 * Of one landmark.
 *
 * @param edgePx how well the edge is known that it went to; undefined for one that stayed where the hand put it.
 */
export function pointingOf(name: LandmarkName, edgePx: number | undefined, given: GivenPointing): PointingError {
  const hand = typeof given === 'number' ? knownPointing(given) : given(name);
  return edgePx === undefined ? hand : knownPointing(pointOnEdgePx(edgePx, hand.pointingPx));
}
