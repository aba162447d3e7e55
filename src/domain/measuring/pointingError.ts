import { pointOnEdgePx } from './edgeDefinition.ts';
import type { LandmarkName, PlacedLandmark } from './landmarks.ts';

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
 * Of one landmark: of the hand, unless the photo was shown too small for that hand; where it went to an edge, of the edge and of what
 * that leaves of the hand.
 */
export function pointingOf(
  name: LandmarkName,
  { pointingPx: edgePx, aimedPx = 0 }: Pick<PlacedLandmark, 'pointingPx' | 'aimedPx'>,
  given: GivenPointing,
): PointingError {
  const hand = typeof given === 'number' ? knownPointing(given) : given(name);
  if (edgePx !== undefined) return knownPointing(pointOnEdgePx(edgePx, Math.max(hand.pointingPx, aimedPx)));
  return aimedPx > hand.pointingPx ? knownPointing(aimedPx) : hand;
}

/** Of a pointer, in pixels of the screen: it stands on whole ones, and no eye aims better. Own judgment. */
const AIM_CSS = 0.5;

/**
 * What a photo shown small leaves of the stated pointing error, px per coordinate; null where it is shown large enough.
 *
 * @param zoom screen pixels per pixel of the photo.
 */
export function coarseAimPx(zoom: number, statedPx: number): number | null {
  const aimedPx = AIM_CSS / zoom;
  return aimedPx > statedPx ? aimedPx : null;
}
