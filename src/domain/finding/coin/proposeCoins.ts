import type { Ellipse } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { factorTo, type LightPlanes, reducePlanes } from '../light.ts';
import { isClosed } from './beyond.ts';
import { rimFrom } from './findCoin.ts';
import { huesOf } from './hue.ts';
import { outermostRim } from './outermostRim.ts';
import type { Rim } from './rim.ts';
import { type RoughRim, roughRim } from './roughRim.ts';
import { circle, confidenceOf, enlarged, evidenceOf, LEAST_CONFIDENCE, outermostOf, searched } from './search.ts';
import { settleRim } from './settleRim.ts';
import { roundPlaces } from './symmetry.ts';

/** A coin found without a click. */
export interface CoinProposal {
  readonly rim: Rim;
  /** 0 to 1: how well edges all around agree on one ellipse, and how much of it they cover. Not a probability. */
  readonly confidence: number;
}

/** Smaller ones have no shape in the picture that is looked round in. */
const LEAST_SMALL_RADIUS_PX = 6;
/** The longest side to which a picture is reduced for looking round. */
const LOOK_ROUND_PX = 480;
const MOST_PLACES = 24;
/** Of the places seen in the small picture, those looked at closely. */
const MOST_LOOKED_AT = 6;

/** What is smaller in the judged picture tells a scale to some hundredths at best, and round things of that size are many. Own assumption. */
const LEAST_RADIUS_PX = 16;

/**
 * Coins in a picture, the most confident first; none when nothing round was seen.
 *
 * @param colors as `judgedPicture` makes them: larger coins are worked on no finer than that after a click either.
 */
export function proposeCoins(colors: LightPlanes): readonly CoinProposal[] {
  const searchedRims = roughRims(colors).flatMap((rough) => searched(colors, rough) ?? []);
  const rims = searchedRims.filter((rim) => unaskedConfidenceOf(rim) >= LEAST_CONFIDENCE);
  const seen: CoinProposal[] = [];
  for (let left = rims; left.length > 0; ) {
    const [strongest] = left.toSorted((one, other) => evidenceOf(other) - evidenceOf(one));
    if (!strongest) break;
    const clearest = outermostOf(left.filter((other) => overlap(strongest, other))) ?? strongest;
    const rim = outermostRim(colors, clearest, searchedRims, (outline) => settleRim(colors, outline) ?? searched(colors, outline));
    if (isCoin(colors, rim.ellipse)) {
      seen.push({ rim: rimFrom(colors, rim), confidence: Math.max(unaskedConfidenceOf(rim), unaskedConfidenceOf(clearest)) });
    }
    left = left.filter((other) => !overlap(strongest, other) && !overlap(rim, other));
  }
  return seen.toSorted((one, other) => other.confidence - one.confidence);
}

/** Edges that meet by chance about a skin leave gaps where a rim has none. */
function isCoin(planes: LightPlanes, rim: Ellipse): boolean {
  return rim.semiMinorPx >= LEAST_RADIUS_PX && isClosed(planes, rim);
}

/** Where nobody has said that there is a coin, a round thing that leaves the picture says less. */
function unaskedConfidenceOf(rim: Rim): number {
  return confidenceOf(rim) * rim.visible ** 2;
}

/** The clearest round outlines, no two alike, as they are seen in a much smaller picture. */
function roughRims(planes: LightPlanes): readonly Ellipse[] {
  const factor = factorTo(planes[0], LOOK_ROUND_PX);
  const small = reducePlanes(planes, factor);
  const radii = { least: LEAST_SMALL_RADIUS_PX, most: 0.2 * Math.min(small[0].widthPx, small[0].heightPx) };
  const hues = huesOf(small);
  const places = [...roundPlaces([small[0]], radii, MOST_PLACES), ...(hues ? roundPlaces(hues, radii, MOST_PLACES) : [])];
  const seen = places
    .flatMap(({ xPx, yPx, radiusPx }) => roughRim(small, hues, circle({ xPx, yPx }, radiusPx)) ?? [])
    .toSorted((one, other) => other.visible * other.agreement * other.coherence - one.visible * one.agreement * one.coherence);
  const kept: RoughRim[] = [];
  for (const rim of seen) {
    if (kept.length === MOST_LOOKED_AT) break;
    if (!kept.some((other) => isAlike(rim.ellipse, other.ellipse))) kept.push(rim);
  }
  return kept.map(({ ellipse }) => enlarged(ellipse, factor));
}

/** Outlines this near to each other lead to the same rim. */
const ALIKE_SHARE = 0.1;

function isAlike(one: Ellipse, other: Ellipse): boolean {
  const apart = Math.hypot(one.centre.xPx - other.centre.xPx, one.centre.yPx - other.centre.yPx);
  const differ = Math.max(Math.abs(one.semiMajorPx - other.semiMajorPx), Math.abs(one.semiMinorPx - other.semiMinorPx));
  return Math.max(apart, differ) < ALIKE_SHARE * one.semiMinorPx;
}

function overlap({ ellipse: one }: Rim, { ellipse: other }: Rim): boolean {
  return isWithin(one, other.centre) || isWithin(other, one.centre);
}

function isWithin({ centre, semiMajorPx }: Ellipse, at: ImagePoint): boolean {
  return Math.hypot(at.xPx - centre.xPx, at.yPx - centre.yPx) < semiMajorPx;
}
