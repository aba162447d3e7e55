import { distance } from './corners.ts';
import { type Landmarks, pointOf } from './landmarks.ts';
import type { ImagePoint } from './points.ts';

/**
 * How far the steepest change of light lies from the landmark that a definition means, per coordinate, as a share of the length of
 * the carapace: hairs, rounding and shadows are lengths on the skin, so they cover more pixels of a finer picture. Own
 * measurement on 15 rendered skins (2 px root mean square with tips of legs, where carapaces were 85 px long; on 241 snapped points
 * of carapace rims alone 2.0 % of the length, of which 0.7 % is a common shift outwards). Counted as independent from
 * point to point, so that a length between two rims has the 3.0 % that shift and scatter as measured make.
 */
export const EDGE_DEFINITION_SHARE = 0.021;

/** Carapaces are a little longer than wide; common practice, no source. */
const LENGTH_PER_WIDTH = 1.1;
/** The shortest measured part of a leg is about half as long as the carapace: rather too uncertain than too sure. */
const LENGTH_PER_EXTENT = 2;

/**
 * What the definition leaves open of a point that was found on an edge, px per coordinate: from the size of the skin in the picture.
 */
export function edgeDefinitionPx(landmarks: Landmarks): number {
  return EDGE_DEFINITION_SHARE * carapaceLengthPx(landmarks);
}

/** Of the carapace, as far as its points tell; else from how far the points that are there lie apart. */
function carapaceLengthPx(landmarks: Landmarks): number {
  const [front, rear] = [pointOf(landmarks['carapace-front']), pointOf(landmarks['carapace-rear'])];
  if (front && rear) return distance(front, rear);
  const [left, right] = [pointOf(landmarks['carapace-left']), pointOf(landmarks['carapace-right'])];
  if (left && right) return LENGTH_PER_WIDTH * distance(left, right);
  const points: ImagePoint[] = Object.values(landmarks).flatMap((landmark) => pointOf(landmark) ?? []);
  return LENGTH_PER_EXTENT * Math.max(0, ...points.flatMap((one) => points.map((other) => distance(one, other))));
}
