import type { Ellipse } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { fail, type Result, succeed } from '../../result.ts';
import type { JudgedPicture } from '../judged.ts';
import { factorTo, type LightPlanes, reducePlanes } from '../light.ts';
import { huesOf, windowOf } from './hue.ts';
import { type Rim, type RoughRim, refineRim, roughRim } from './rim.ts';
import { roundPlaces } from './symmetry.ts';

/** A coin found without a click. */
export interface CoinProposal {
  readonly rim: Rim;
  /** 0 to 1: how well edges all around agree on one ellipse, and how much of it they cover. Not a probability. */
  readonly confidence: number;
}

/** Rough search happens at about this radius, where a coin's relief is small beside its rim. */
const SEARCH_RADIUS_PX = 40;
const LEAST_RADIUS_PX = 10;
/** Smaller ones have no shape in the picture that is looked round in. */
const LEAST_SMALL_RADIUS_PX = 6;
/** No coin that helps to measure fills more than this share of the shorter side. */
const GREATEST_SHARE = 0.3;
const RADIUS_STEP = 1.25;
const SEARCH_REACH = 0.2;
/** A circle through three points of a slim ellipse may be off by this share of its radius. */
const CLICKED_REACH = 0.3;
/** After the rough search the rim is known this well. */
const FOUND_REACH = 0.06;
/** An outline is believed from this confidence on. */
const LEAST_CONFIDENCE = 0.5;
/** An engraved ring may be stronger than the rim about it; outlines weaker than this share of it are chance. */
const RIM_OVER_RING = 0.4;
/** A ring and the rim about it have their middles within this share of the lesser radius; a coin's height shifts them a little. */
const CONCENTRIC_SHARE = 0.12;
/** Three clicks whose triangle is lower than this share of its longest side say little about a circle. */
const FLATTEST_TRIANGLE = 0.08;

/** The rim of the coin about a rough middle: the outermost outline that edges agree on, for rings are engraved inside of rims. */
export function rimAbout(planes: LightPlanes, middle: ImagePoint): Result<Rim> {
  const first = believedAbout(planes, middle);
  const rough = outermostOf(first);
  if (!rough) return fail({ code: 'rim-not-found' });
  // From a better middle more of the true outlines are seen; chance ones are not seen again.
  const best = outermostOf([...first, ...believedAbout(planes, rough.ellipse.centre)]);
  return succeed(best ?? rough);
}

function believedAbout(planes: LightPlanes, middle: ImagePoint): readonly Rim[] {
  const [{ widthPx, heightPx }] = planes;
  const rims: Rim[] = [];
  for (let radiusPx = LEAST_RADIUS_PX; radiusPx < GREATEST_SHARE * Math.min(widthPx, heightPx); radiusPx *= RADIUS_STEP) {
    const rim = searched(planes, circle(middle, radiusPx));
    // Seen once more from its own shape, an outline that is there comes out clearer.
    if (rim) rims.push(searched(planes, rim.ellipse) ?? rim);
  }
  return rims.filter(isBelieved);
}

/** The rim through three clicks on it, in any order. */
export function rimThrough(planes: LightPlanes, clicks: readonly [ImagePoint, ImagePoint, ImagePoint]): Result<Rim> {
  const rough = circleThrough(clicks);
  if (!rough) return fail({ code: 'points-on-a-line' });
  const rim = refineRim(planes, rough) ?? refineRim(planes, rough, CLICKED_REACH);
  return rim && isBelieved(rim) ? succeed(rim) : rimAbout(planes, rough.centre);
}

/** The longest side to which a picture is reduced for looking round. */
const LOOK_ROUND_PX = 480;
const MOST_PLACES = 24;
/** Of the places seen in the small picture, those looked at closely. */
const MOST_LOOKED_AT = 6;

/**
 * Coins in a picture, the most confident first; none when nothing round was seen.
 *
 * @param planes one picture in linear light at full size; `judged` the same made smaller.
 */
export function proposeCoins(
  planes: LightPlanes,
  { colors, factor: toJudging }: Pick<JudgedPicture, 'colors' | 'factor'>,
): readonly CoinProposal[] {
  const rims = roughRims(colors)
    .flatMap((rough) => searched(colors, rough) ?? [])
    .filter(isBelieved);
  const proposals: CoinProposal[] = [];
  for (let left = rims; left.length > 0; ) {
    const [strongest] = left.toSorted((one, other) => evidenceOf(other) - evidenceOf(one));
    if (!strongest) break;
    const rim = outermostOf(left.filter((other) => overlap(strongest, other))) ?? strongest;
    // The rim itself is taken from the picture at full size.
    const whole = toJudging === 1 ? rim : refineRim(planes, enlarged(rim.ellipse, toJudging), FOUND_REACH);
    if (whole) proposals.push({ rim: whole, confidence: confidenceOf(rim) });
    left = left.filter((other) => !overlap(strongest, other) && !overlap(rim, other));
  }
  return proposals.toSorted((one, other) => other.confidence - one.confidence);
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
    .toSorted((one, other) => other.agreement * other.coherence - one.agreement * one.coherence);
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

/** Finds the rim in a smaller picture first, where a wide search is quick, then at full size. */
function searched(planes: LightPlanes, rough: Ellipse): Rim | null {
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

function confidenceOf({ agreement, coverage, coherence }: Rim): number {
  return agreement * coverage * coherence;
}

/** What is to be compared within one picture: a faint outline may be as regular as a strong one. */
function evidenceOf(rim: Rim): number {
  return confidenceOf(rim) ** 2 * rim.contrast;
}

function isBelieved(rim: Rim): boolean {
  return confidenceOf(rim) >= LEAST_CONFIDENCE;
}

/** Of outlines about one place: the largest of those about the best one's middle that have much of its evidence. */
function outermostOf(rims: readonly Rim[]): Rim | null {
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

function overlap({ ellipse: one }: Rim, { ellipse: other }: Rim): boolean {
  return isWithin(one, other.centre) || isWithin(other, one.centre);
}

function enlarged({ centre, semiMajorPx, semiMinorPx, angleRad }: Ellipse, factor: number): Ellipse {
  return {
    centre: { xPx: factor * centre.xPx, yPx: factor * centre.yPx },
    semiMajorPx: factor * semiMajorPx,
    semiMinorPx: factor * semiMinorPx,
    angleRad,
  };
}

function circle(centre: ImagePoint, radiusPx: number): Ellipse {
  return { centre, semiMajorPx: radiusPx, semiMinorPx: radiusPx, angleRad: 0 };
}

function isWithin({ centre, semiMajorPx }: Ellipse, at: ImagePoint): boolean {
  return Math.hypot(at.xPx - centre.xPx, at.yPx - centre.yPx) < semiMajorPx;
}

/** Null when the three points lie nearly on a line: the circle would be larger than any coin. */
function circleThrough([a, b, c]: readonly [ImagePoint, ImagePoint, ImagePoint]): Ellipse | null {
  const [bx, by, cx, cy] = [b.xPx - a.xPx, b.yPx - a.yPx, c.xPx - a.xPx, c.yPx - a.yPx];
  const twiceArea = bx * cy - by * cx;
  const longest = Math.max(Math.hypot(bx, by), Math.hypot(cx, cy), Math.hypot(cx - bx, cy - by));
  if (!(Math.abs(twiceArea) > FLATTEST_TRIANGLE * longest * longest)) return null;
  const x = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / (2 * twiceArea);
  const y = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / (2 * twiceArea);
  return circle({ xPx: a.xPx + x, yPx: a.yPx + y }, Math.hypot(x, y));
}
