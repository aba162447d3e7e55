import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { type Across, LEAST_VISIBLE, misfitPx, type Ray, raysAcross, type Scene, visibleOf } from './consensus.ts';
import { ellipseThrough } from './ellipseThrough.ts';

/** An ellipse that edges lie on, closely. */
export interface ClosedOutline {
  readonly ellipse: Ellipse;
  /** The step of each ray that lies on it, where there is one. */
  readonly points: readonly ImagePoint[];
  /** How much of its way in the picture lies on edges, 0 to 1: mean over the rays of how near the nearest step is. */
  readonly closed: number;
  /** Share of the rays that have a step on it. */
  readonly coverage: number;
  /** Share of its way that lies in the picture. */
  readonly visible: number;
}

/** How to look across an outline: by light, by color. */
export const BY_LIGHT = { sigmaPx: 1, alongShare: 0.07 } as const;
export const BY_HUE = { sigmaPx: 2.2, alongShare: 0.16 } as const;

const RAYS = 120;
/** Borders, walls and shadows of a coin lie within this share of the lesser radius about its rim. */
const REACH = 0.17;
/** Faint steps count too: on a shiny coin an engraved border outshines the rim. */
const STEPS = { most: 6, weakest: 0.08 };
/** Steps of this share of the strongest on their ray, and stronger ones, count fully. */
const FULL_STEP = 1 / 3;
const STARTS_APART_PX = 2;
/** Outlines of wall and shadow are moved to one side of the rim, by about this much at the size that is looked at. */
const SHIFT_PX = 2.5;
const UNMOVED = [{ x: 0, y: 0 }];
const MOVED = [...UNMOVED, ...Array.from({ length: 8 }, (_, index) => turned((index * Math.PI) / 4))];
/** Each fit takes the nearest step of each ray within this, px. */
const WINDOWS_PX = [5, 3, 2, 1.5, 1.5];
const LEAST_POINTS = 40;
const LEAST_CLOSED = 0.5;
/** An edge this near to the ellipse, px, or this share of its lesser radius, may belong to it. */
const TOLERANCE_PX = 1.1;
const TOLERANCE_SHARE = 0.015;
const ALIKE_PX = 0.8;

/**
 * All ellipses about a rough one that edges lie on around most of their way, the most closed first. From many starts, larger and
 * smaller and moved to each side, the nearest steps are fitted again and again, ever more closely.
 *
 * Rim, border, wall and shadow of a coin lie close together, and an ellipse through the rim on one side and the shadow on the other
 * is nearly as good an ellipse. But only the rim is an edge all around.
 *
 * @param about with a lesser radius of some 40 to 130 px, within a tenth of the rim.
 */
export function closedOutlines(scene: Scene, about: Ellipse, across: Omit<Across, 'reachPx'>): readonly ClosedOutline[] {
  return outlinesFrom(MOVED, scene, about, across);
}

/** Those of them that lie about the same middle, much quicker. */
export function concentricOutlines(scene: Scene, about: Ellipse, across: Omit<Across, 'reachPx'>): readonly ClosedOutline[] {
  return outlinesFrom(UNMOVED, scene, about, across);
}

type Shifts = readonly { readonly x: number; readonly y: number }[];

function outlinesFrom(shifts: Shifts, scene: Scene, about: Ellipse, across: Omit<Across, 'reachPx'>): readonly ClosedOutline[] {
  const reachPx = REACH * about.semiMinorPx;
  const rays = visibleOf(raysAcross(scene, about, RAYS, { reachPx, ...across, ...STEPS }));
  if (rays.length < LEAST_VISIBLE * RAYS) return [];
  const found: ClosedOutline[] = [];
  for (let outPx = -reachPx; outPx <= reachPx; outPx += STARTS_APART_PX) {
    for (const { x, y } of shifts) {
      const start: Ellipse = {
        centre: { xPx: about.centre.xPx + x, yPx: about.centre.yPx + y },
        semiMajorPx: about.semiMajorPx + outPx,
        semiMinorPx: about.semiMinorPx + outPx,
        angleRad: about.angleRad,
      };
      const outline = settled(rays, start, about);
      if (outline && outline.closed >= LEAST_CLOSED && !found.some((other) => isAlike(outline.ellipse, other.ellipse))) found.push(outline);
    }
  }
  return found.toSorted((one, other) => other.closed - one.closed);
}

function turned(angleRad: number): { readonly x: number; readonly y: number } {
  return { x: SHIFT_PX * Math.cos(angleRad), y: SHIFT_PX * Math.sin(angleRad) };
}

function settled(rays: readonly Ray[], start: Ellipse, about: Ellipse): ClosedOutline | null {
  const fitting = ellipseThrough(LEAST_POINTS, about);
  let ellipse = start;
  for (const windowPx of WINDOWS_PX) {
    const next = fitting(nearest(rays, ellipse, windowPx));
    if (!next || !(next.semiMinorPx > 0.6 * about.semiMinorPx && next.semiMajorPx < 1.4 * about.semiMajorPx)) return null;
    ellipse = next;
  }
  const tolerancePx = Math.max(TOLERANCE_PX, TOLERANCE_SHARE * about.semiMinorPx);
  const closed = rays.reduce((sum, ray) => sum + onEdge(ray, ellipse, tolerancePx), 0) / rays.length;
  const points = nearest(rays, ellipse, tolerancePx);
  return { ellipse, points, closed, coverage: points.length / rays.length, visible: rays.length / RAYS };
}

/** Tukey's biweight of the distance, of a faint step less. */
function onEdge(ray: Ray, ellipse: Ellipse, tolerancePx: number): number {
  const strongest = ray[0]?.strength ?? 1;
  return ray.reduce((best, { at, strength }) => {
    const off = misfitPx(ellipse, at) / tolerancePx;
    return Math.abs(off) < 1 ? Math.max(best, (1 - off * off) ** 2 * Math.min(1, strength / (FULL_STEP * strongest))) : best;
  }, 0);
}

function nearest(rays: readonly Ray[], ellipse: Ellipse, windowPx: number): readonly ImagePoint[] {
  return rays.flatMap((ray) => {
    let least = windowPx;
    let best: ImagePoint | null = null;
    for (const { at } of ray) {
      const off = Math.abs(misfitPx(ellipse, at));
      if (off < least) {
        least = off;
        best = at;
      }
    }
    return best ? [best] : [];
  });
}

function isAlike(one: Ellipse, other: Ellipse): boolean {
  for (let index = 0; index < 16; index += 1) {
    if (Math.abs(misfitPx(one, pointOn(other, (Math.PI * index) / 8))) > ALIKE_PX) return false;
  }
  return true;
}
