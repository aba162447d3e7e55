import { type Ellipse, matrixOf, normalAt, pointOn } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import type { Generator } from '../../numerics/generator.ts';
import type { Matrix3 } from '../../numerics/matrix3.ts';
import type { LightPlanes } from '../light.ts';
import { edgeSearch, extentPx, stepsAcross } from '../profile.ts';
import { ellipseThrough } from './ellipseThrough.ts';
import { type Frame, isWithin } from './hue.ts';

/** The steps of light on one line across an outline, strongest first; only one of them can be the rim. */
export type Ray = readonly { readonly at: ImagePoint; readonly strength: number }[];

/** An ellipse and how far the rays carry it. */
export interface Outline {
  readonly ellipse: Ellipse;
  /** Mean over the rays in the picture of how near and how strong their best step is, 0 to 1. */
  readonly agreement: number;
  /** Share of the rays that lie in the picture, 0 to 1. */
  readonly visible: number;
}

/** How to look across an outline. */
export interface Across {
  readonly reachPx: number;
  readonly sigmaPx: number;
  /** Samples are averaged along the edge over this share of the lesser radius. */
  readonly alongShare: number;
  /** How many steps of one line to keep, and how weak, as a share of its strongest. */
  readonly most?: number;
  readonly weakest?: number;
}

const MOST_ALONG_PX = 16;
const MOST_STEPS_PER_RAY = 4;
/** Steps weaker than this share of the strongest on the same ray are grain. */
const WEAKEST_STEP = 0.2;

/** A part of a picture, and how far the whole of it reaches. */
export interface Scene {
  readonly planes: LightPlanes;
  readonly frame: Frame;
}

/**
 * The steps on lines across an ellipse, evenly spread over its eccentric angle; each is averaged a little along the edge.
 *
 * @returns null for each line that leaves the picture.
 */
export function raysAcross({ planes, frame }: Scene, ellipse: Ellipse, count: number, across: Across): readonly (Ray | null)[] {
  const { reachPx, sigmaPx, alongShare, most = MOST_STEPS_PER_RAY, weakest = WEAKEST_STEP } = across;
  const search = edgeSearch({
    reachPx,
    stepPx: 0.5,
    sigmaPx,
    alongPx: Math.max(1, Math.min(MOST_ALONG_PX, alongShare * ellipse.semiMinorPx)),
  });
  const extent = extentPx(search);
  return Array.from({ length: count }, (_, index) => {
    const angle = (2 * Math.PI * index) / count;
    const foot = pointOn(ellipse, angle);
    const normal = normalAt(ellipse, angle);
    if (![-extent, extent].every((by) => isWithin(frame, { xPx: foot.xPx + by * normal.x, yPx: foot.yPx + by * normal.y }))) return null;
    const steps = stepsAcross(planes, foot.xPx, foot.yPx, normal, search);
    const least = weakest * (steps[0]?.strength ?? 0);
    return steps
      .filter((step) => step.strength >= least)
      .slice(0, most)
      .map(({ offsetPx, strength }) => ({
        at: { xPx: foot.xPx + offsetPx * normal.x, yPx: foot.yPx + offsetPx * normal.y },
        strength,
      }));
  });
}

/** The lines that stay in the picture. */
export function visibleOf(rays: readonly (Ray | null)[]): readonly Ray[] {
  return rays.filter((ray) => ray !== null);
}

const TRIALS = 250;
const SECTORS = 6;
/** An outline flatter than this is a coin seen from 70 degrees aside: nobody measures there. */
const FLATTEST = 0.35;
/** Less than this share of an outline in the picture does not tell an ellipse from another: coins may be tilted anyhow. Own assumption. */
export const LEAST_VISIBLE = 0.5;
/** Below this agreement the edges met by chance. */
const LEAST_AGREEMENT = 0.4;

/**
 * The ellipse that most rays agree on (Fischler & Bolles 1981, Communications of the ACM 24:381): each trial takes one step
 * from each sixth of the rays, and is judged by how near all rays have a step.
 *
 * @param all rays; null for those that left the picture, and the agreement is that of the others.
 * @param rough the outline the rays were laid across; its size limits what is believed.
 * @returns null when no ellipse carries enough of the rays.
 */
export function consensusEllipse(all: readonly (Ray | null)[], rough: Ellipse, draw: Generator, leastVisible: number): Outline | null {
  const tolerancePx = Math.max(0.7, 0.025 * rough.semiMinorPx);
  const rays = visibleOf(all);
  if (rays.length < leastVisible * all.length) return null;
  if (rays.reduce((count, ray) => count + (ray.length > 0 ? 1 : 0), 0) < SECTORS) return null;
  const steps = flatSteps(rays, rough);
  const fitting = ellipseThrough(SECTORS, rough);
  let best: Outline | null = null;
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const candidate = fitting(sample(rays, draw));
    if (!candidate || !isPlausible(candidate, rough)) continue;
    const agreement = agreementOf(steps, candidate, tolerancePx, best?.agreement ?? LEAST_AGREEMENT);
    if (agreement > (best?.agreement ?? LEAST_AGREEMENT)) best = { ellipse: candidate, agreement, visible: rays.length / all.length };
  }
  return best;
}

function sample(rays: readonly Ray[], draw: Generator): readonly ImagePoint[] {
  const points: ImagePoint[] = [];
  for (let sector = 0; sector < SECTORS; sector += 1) {
    const index = Math.floor(((sector + draw()) / SECTORS) * rays.length);
    const ray = rays[index] ?? [];
    // The strongest step half of the time, any other else.
    const step = ray[draw() < 0.5 ? 0 : Math.floor(draw() * ray.length)];
    if (step) points.push(step.at);
  }
  return points;
}

function isPlausible(candidate: Ellipse, rough: Ellipse): boolean {
  const size = Math.sqrt(candidate.semiMajorPx * candidate.semiMinorPx) / Math.sqrt(rough.semiMajorPx * rough.semiMinorPx);
  const shift = Math.hypot(candidate.centre.xPx - rough.centre.xPx, candidate.centre.yPx - rough.centre.yPx);
  return candidate.semiMinorPx > FLATTEST * candidate.semiMajorPx && size > 0.7 && size < 1.4 && shift < 0.35 * rough.semiMajorPx;
}

/** All steps of all rays in a row, about the rough middle; `ends` says where each ray's steps end. */
interface FlatSteps {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Of the strongest on the same ray. */
  readonly share: Float64Array;
  readonly ends: Int32Array;
  readonly about: ImagePoint;
}

function flatSteps(rays: readonly Ray[], { centre }: Ellipse): FlatSteps {
  const all = rays.flatMap((ray) => ray.map(({ at, strength }) => ({ at, share: strength / (ray[0]?.strength ?? 1) })));
  const ends = new Int32Array(rays.length);
  let end = 0;
  rays.forEach((ray, index) => {
    end += ray.length;
    ends[index] = end;
  });
  return {
    x: Float64Array.from(all, ({ at }) => at.xPx - centre.xPx),
    y: Float64Array.from(all, ({ at }) => at.yPx - centre.yPx),
    share: Float64Array.from(all, ({ share }) => share),
    ends,
    about: centre,
  };
}

/** Stops as soon as the rays that are left cannot lift the agreement above `least` any more. */
function agreementOf({ x, y, share, ends, about }: FlatSteps, candidate: Ellipse, tolerancePx: number, least: number): number {
  const centre = { xPx: candidate.centre.xPx - about.xPx, yPx: candidate.centre.yPx - about.yPx };
  const [a, b, d, , c, e, , , f] = matrixOf({ ...candidate, centre });
  const scale = 1 / (4 * tolerancePx * tolerancePx);
  let score = 0;
  let at = 0;
  for (let ray = 0; ray < ends.length; ray += 1) {
    let best = 0;
    for (const end = ends[ray] ?? 0; at < end; at += 1) {
      const [xPx, yPx] = [x[at] ?? 0, y[at] ?? 0];
      const across = a * xPx + b * yPx + d;
      const down = b * xPx + c * yPx + e;
      const value = across * xPx + down * yPx + d * xPx + e * yPx + f;
      const near = (share[at] ?? 0) * (1 - (scale * value * value) / (across * across + down * down));
      if (near > best) best = near;
    }
    score += best;
    if (score + ends.length - ray - 1 < least * ends.length) return 0;
  }
  return score / ends.length;
}

/** Signed distance from an ellipse to first order, px: good to a few per cent near it (Sampson 1982, CGIP 18:97). Positive outside. */
export function misfitPx(ellipse: Ellipse, at: ImagePoint): number {
  return sampson(matrixOf(ellipse), at);
}

function sampson(m: Matrix3, { xPx, yPx }: ImagePoint): number {
  const x = m[0] * xPx + m[1] * yPx + m[2];
  const y = m[3] * xPx + m[4] * yPx + m[5];
  const value = x * xPx + y * yPx + m[6] * xPx + m[7] * yPx + m[8];
  return value / (2 * Math.hypot(x, y));
}
