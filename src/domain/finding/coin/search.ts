import type { Ellipse } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { type LightPlanes, reducePlanes } from '../light.ts';
import { windowOf } from './hue.ts';
import { type Rim, refineRim } from './rim.ts';

/** Rough search happens at about this radius, where a coin's relief is small beside its rim. */
const SEARCH_RADIUS_PX = 40;
const SEARCH_REACH = 0.2;
/** After the rough search the rim is known this well. */
const FOUND_REACH = 0.06;
/** An outline is believed from this confidence on. */
export const LEAST_CONFIDENCE = 0.5;
/** An engraved ring may be stronger than the rim about it; outlines weaker than this share of it are chance. */
const RIM_OVER_RING = 0.4;
/** A ring and the rim about it have their middles within this share of the lesser radius; a coin's height shifts them a little. */
const CONCENTRIC_SHARE = 0.12;

/** Finds the rim in a smaller picture first, where a wide search is quick, then at full size. */
export function searched(planes: LightPlanes, rough: Ellipse): Rim | null {
  const factor = Math.max(1, Math.floor(rough.semiMinorPx / SEARCH_RADIUS_PX));
  if (factor === 1) return refineRim(planes, rough, SEARCH_REACH);
  const { planes: cut, origin } = windowOf(planes, rough.centre, 2 * rough.semiMajorPx);
  const small = reducePlanes(cut, factor);
  const middle = { xPx: (rough.centre.xPx - origin.xPx) / factor, yPx: (rough.centre.yPx - origin.yPx) / factor };
  const shape = { ...rough, centre: middle, semiMajorPx: rough.semiMajorPx / factor, semiMinorPx: rough.semiMinorPx / factor };
  const coarse = refineRim(small, shape, SEARCH_REACH);
  if (!coarse) return null;
  const found = enlarged(coarse.ellipse, factor);
  const centre = { xPx: origin.xPx + found.centre.xPx, yPx: origin.yPx + found.centre.yPx };
  return refineRim(planes, { ...found, centre }, FOUND_REACH);
}

export function confidenceOf({ agreement, coverage, coherence }: Rim): number {
  return agreement * coverage * coherence;
}

/** What is to be compared within one picture: a faint outline may be as regular as a strong one. */
export function evidenceOf(rim: Rim): number {
  return confidenceOf(rim) ** 2 * rim.contrast;
}

export function isBelieved(rim: Rim): boolean {
  return confidenceOf(rim) >= LEAST_CONFIDENCE;
}

/** Of outlines about one place: the largest of those about the best one's middle that have much of its evidence. */
export function outermostOf(rims: readonly Rim[]): Rim | null {
  const [best] = rims.toSorted((one, other) => evidenceOf(other) - evidenceOf(one));
  if (!best) return null;
  const [outermost] = rims
    .filter((rim) => evidenceOf(rim) >= RIM_OVER_RING * evidenceOf(best) && isConcentric(rim.ellipse, best.ellipse))
    .toSorted((one, other) => other.ellipse.semiMinorPx - one.ellipse.semiMinorPx);
  return outermost ?? best;
}

function isConcentric(one: Ellipse, other: Ellipse): boolean {
  const apart = Math.hypot(one.centre.xPx - other.centre.xPx, one.centre.yPx - other.centre.yPx);
  return apart < CONCENTRIC_SHARE * Math.min(one.semiMinorPx, other.semiMinorPx);
}

/** A rim in a picture `factor` times as large. */
export function enlargedRim(rim: Rim, factor: number): Rim {
  return {
    ...rim,
    ellipse: enlarged(rim.ellipse, factor),
    residualPx: factor * rim.residualPx,
    standardUncertaintyPx: factor * rim.standardUncertaintyPx,
  };
}

export function enlarged({ centre, semiMajorPx, semiMinorPx, angleRad }: Ellipse, factor: number): Ellipse {
  return {
    centre: { xPx: factor * centre.xPx, yPx: factor * centre.yPx },
    semiMajorPx: factor * semiMajorPx,
    semiMinorPx: factor * semiMinorPx,
    angleRad,
  };
}

export function circle(centre: ImagePoint, radiusPx: number): Ellipse {
  return { centre, semiMajorPx: radiusPx, semiMinorPx: radiusPx, angleRad: 0 };
}
