import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { fail, type Result, succeed } from '../../result.ts';
import { isInside, type LightPlanes } from '../light.ts';
import { LEAST_VISIBLE } from './consensus.ts';
import { outermostRim } from './outermostRim.ts';
import { recurringRim } from './recurringRim.ts';
import { type Rim, refineRim } from './rim.ts';
import { arcOf } from './roughRim.ts';
import { circle, evidenceOf, isBelieved, LEAST_CONFIDENCE, outermostOf, searched } from './search.ts';
import { settleRim } from './settleRim.ts';
import { withTransition } from './transition.ts';

const LEAST_RADIUS_PX = 10;
/** No coin that helps to measure fills more than this share of the shorter side. */
const GREATEST_SHARE = 0.3;
const RADIUS_STEP = 1.25;
/** A circle through three points of a slim ellipse may be off by this share of its radius. */
const CLICKED_REACH = 0.3;
/** Three clicks whose triangle is lower than this share of its longest side say little about a circle. */
const FLATTEST_TRIANGLE = 0.08;
/** Of outlines that nobody believes in yet, this many are looked at more closely. */
const MOST_DOUBTED = 4;

/**
 * The rim of the coin about a rough middle: the outermost outline that edges agree on, for rings are engraved inside of rims.
 *
 * @returns `rim-not-found`, or `rim-cut-off` where a rim leaves the picture with more than half of its way.
 */
export function rimAbout(planes: LightPlanes, middle: ImagePoint): Result<Rim> {
  const first = seenAbout(planes, middle);
  const believed = first.filter(isBelieved);
  const rough = outermostOf(believed);
  if (rough) {
    // From a better middle more of the true outlines are seen; chance ones are not seen again.
    const second = seenAbout(planes, rough.ellipse.centre).filter(isBelieved);
    const outline = outermostOf([...believed, ...second]) ?? rough;
    return succeed(rimOf(planes, settled(planes, outline, believed), first));
  }
  const rim = clearestAmong(planes, first);
  if (rim) return succeed(rimOf(planes, rim, first));
  return fail({ code: isCutOffAbout(planes, middle) ? 'rim-cut-off' : 'rim-not-found' });
}

/**
 * The rim through three clicks on it, in any order.
 *
 * @returns `points-on-a-line`, or as `rimAbout` does.
 */
export function rimThrough(planes: LightPlanes, clicks: readonly [ImagePoint, ImagePoint, ImagePoint]): Result<Rim> {
  const rough = circleThrough(clicks);
  if (!rough) return fail({ code: 'points-on-a-line' });
  if (visibleShareOf(planes, rough) < LEAST_VISIBLE) return fail({ code: 'rim-cut-off' });
  const rim = refineRim(planes, rough) ?? refineRim(planes, rough, CLICKED_REACH);
  return rim && isBelieved(rim) ? succeed(rimOf(planes, settled(planes, rim, [rim]), [])) : rimAbout(planes, rough.centre);
}

/** The upper rim of a coin of which an outline was found already: its rim, its wall, or a ring on it. */
export function rimFrom(planes: LightPlanes, outline: Rim): Rim {
  return rimOf(planes, settled(planes, outline, [outline]), []);
}

function seenAbout(planes: LightPlanes, middle: ImagePoint): readonly Rim[] {
  return radiiIn(planes).flatMap((radiusPx) => {
    const rim = searched(planes, circle(middle, radiusPx));
    // Seen once more from its own shape, an outline that is there comes out clearer.
    return rim ? [searched(planes, rim.ellipse) ?? rim] : [];
  });
}

function radiiIn([{ widthPx, heightPx }]: LightPlanes): readonly number[] {
  const radii: number[] = [];
  for (let radiusPx = LEAST_RADIUS_PX; radiusPx < GREATEST_SHARE * Math.min(widthPx, heightPx); radiusPx *= RADIUS_STEP)
    radii.push(radiusPx);
  return radii;
}

/** The upper rim near a believed outline; where it cannot be told, the outline about that place which is no chance. */
function settled(planes: LightPlanes, outline: Rim, seen: readonly Rim[]): Rim {
  const search = (rough: Ellipse): Rim | null => {
    const rim = searched(planes, rough);
    return rim && isBelieved(rim) ? rim : null;
  };
  return settleRim(planes, outline.ellipse) ?? recurringRim(seen, outline.ellipse, search) ?? outline;
}

/** The outermost about what was found, and the upper rim there. */
function rimOf(planes: LightPlanes, found: Rim, seen: readonly Rim[]): Rim {
  const outermost = outermostRim(planes, found, seen, (outline) => {
    const rim = settleRim(planes, outline) ?? searched(planes, outline);
    return rim && settled(planes, rim, []);
  });
  return withTransition(planes, outermost);
}

/** Faint outlines may belong to a coin too shiny to be believed in at once: an edge closed all around tells. */
function clearestAmong(planes: LightPlanes, doubted: readonly Rim[]): Rim | null {
  const [clearest] = doubted
    .toSorted((one, other) => evidenceOf(other) - evidenceOf(one))
    .slice(0, MOST_DOUBTED)
    .flatMap((rim) => settleRim(planes, rim.ellipse) ?? [])
    .toSorted((one, other) => other.closed - one.closed);
  return clearest ?? null;
}

/** Whether an arc of less than half of a circle stands about a place. */
function isCutOffAbout(planes: LightPlanes, middle: ImagePoint): boolean {
  return radiiIn(planes).some((radiusPx) => {
    const rough = circle(middle, radiusPx);
    if (visibleShareOf(planes, rough) > LARGEST_CUT_SHARE) return false;
    const arc = arcOf(planes, rough, LEAST_ARC);
    return arc !== null && arc.visible < LEAST_VISIBLE && arc.agreement * arc.coherence >= LEAST_CONFIDENCE;
  });
}

/** Less than this share of a rim is no sign of one. */
const LEAST_ARC = 0.2;
/** Edges are looked for a little to both sides of a circle, so less of it is seen than lies in the picture. */
const LARGEST_CUT_SHARE = 0.75;
const CIRCLE_POINTS = 72;

function visibleShareOf([plane]: LightPlanes, rough: Ellipse): number {
  const points = Array.from({ length: CIRCLE_POINTS }, (_, index) => pointOn(rough, (2 * Math.PI * index) / CIRCLE_POINTS));
  return points.filter(({ xPx, yPx }) => isInside(plane, xPx, yPx)).length / CIRCLE_POINTS;
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
