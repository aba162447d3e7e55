/**
 * Standard uncertainty of the slope (tangent of the tilt) in each of two directions at right angles, for a phone held by hand over a
 * table without a level: half of the pictures within 10 degrees, 95 of 100 within 20. A judgment, no source; what a scale object
 * itself tells of its tilt outweighs it as soon as it tells more.
 */
export const SLOPE_STANDARD_UNCERTAINTY = 0.145;

/** Slopes less certain than this count as unknown: their second order is 0.1 % of a length. */
export const SECOND_ORDER_SLOPE = 0.045;
