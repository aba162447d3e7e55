/**
 * How far the steepest change of light lies from what a landmark means, per coordinate, however well the hand points: its standard
 * uncertainty in pixels. Hairs, rounding and shadows are lengths on the skin, but a point goes to what lies within reach of the hand,
 * and that is so many pixels of any picture. Own measurement on 17 rendered photos (16 skins, one animal), with clicks on the true
 * places: 1.0 px root mean square on carapaces 42 to 154 px long, 0.8 px on one of 400 px. Part of it is a shift outwards of 0.5 px on
 * average; it is none on the large carapace and changes its sign between skins, so it is not corrected but counted here.
 */
const EDGE_DEFINITION_PX = 1;

/**
 * The share of the hand's error that going to an edge leaves: a skin has several, and the hand decides which of them is near. Own
 * measurement on the same skins: hands that err by 1.5 and 3 px left 1.4 and 2.6 px root mean square along the measure.
 */
const LEFT_OF_THE_HAND = 0.9;

/** What the definition leaves open of a point that went to an edge from where a hand with this error has clicked, px per coordinate. */
export function edgeDefinitionPx(handPx: number): number {
  return Math.max(EDGE_DEFINITION_PX, LEFT_OF_THE_HAND * handPx);
}

/**
 * All that is uncertain of a point on an edge, px per coordinate.
 *
 * @param edgePx how well the edge itself is known; `handPx` of the hand that has clicked beside it.
 */
export function pointOnEdgePx(edgePx: number, handPx: number): number {
  return Math.hypot(edgePx, edgeDefinitionPx(handPx));
}

/** Of a reach over the error of the hand. Three misses of a hundred are larger (Rayleigh); what was measured above held with as much. */
const REACH_PER_HAND = 8 / 3;

/**
 * How far, in pixels of the picture, a point may go to an edge from where a hand with this error has clicked: `edgeDefinitionPx` says
 * nothing of edges farther away, however small the picture was shown when the click was made.
 */
export function mostReachPx(handPx: number): number {
  return REACH_PER_HAND * handPx;
}
