import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { seededGenerator } from '../../numerics/generator.ts';
import { type LightPlanes, lightAt } from '../light.ts';
import { consensusEllipse, LEAST_VISIBLE, misfitPx, type Outline, type Ray, raysAcross, type Scene, visibleOf } from './consensus.ts';
import { type EllipseFit, geometricEllipse } from './fitEllipse.ts';
import { huesOf, isWithin, windowOf } from './hue.ts';

/** The rim of a coin found in a picture. */
export interface Rim {
  readonly ellipse: Ellipse;
  /** Scatter of the edge points about the ellipse, px. */
  readonly residualPx: number;
  /** Standard uncertainty of the rim as a whole, px: of its middle per coordinate, of its mean radius, of its elongation. */
  readonly standardUncertaintyPx: number;
  /** Whether the upper rim was told from what lies close about it: wall, shadow, engraved border. */
  readonly settled: boolean;
  /** Share of the rim that lies in the picture, 0 to 1. */
  readonly visible: number;
  /** Share of that along which its edge was seen, 0 to 1. */
  readonly coverage: number;
  /** How well the rays agreed before polishing, 0 to 1: what tells a coin from a chance meeting of edges. */
  readonly agreement: number;
  /** How alike the change from inside to outside is all around, 0 to 1: near 1 for a disk of another material than its ground. */
  readonly coherence: number;
  /** Length of the mean change from inside to outside: natural logarithm for a rim found by color, else light. */
  readonly contrast: number;
}

/** How far from the rough outline the rim may lie, as a share of its lesser radius. */
const ROUGH_REACH = 0.2;
const ROUGH_RAYS = 96;
const FINE_RAYS = 240;
/** Beyond the reach the picture is needed this far: the kernel of the search, and what is averaged along an edge. */
const WINDOW_MARGIN_PX = 24;
/** Coins smaller than this have too few pixels to say anything. */
const LEAST_RADIUS_PX = 6;
/**
 * Edges of color are softer than those of light: cameras and JPEG keep color at half the resolution. What bevel, wear and the
 * wall of a coin displace as a whole, `systematicPx`, is own assumption; color sees the wall where it is in the coin's color.
 */
const HUE = { roughSigmaPx: 2.2, fineSigmaPx: 2.2, alongShare: 0.16, sweeps: [5, 4, 3], systematicPx: 0.9 } as const;
const LIGHT = { roughSigmaPx: 1, fineSigmaPx: 1, alongShare: 0.07, sweeps: [4, 2.5, 2], systematicPx: 0.3 } as const;
/** Color decides alone where this share of the rays agrees on it. */
const HUE_DECIDES = 0.5;
/** Edges of light count as those of the rim when they lie this near to those of color, along this share of it. */
const SAME_EDGE_PX = 1.5;
const SAME_EDGE_SHARE = 0.7;
/** Neighboring rays see the same dirt and the same shadow: this many count as one. Own assumption. */
const RAYS_PER_INDEPENDENT_ONE = 10;
const SEED = 1;

type Senses = typeof HUE | typeof LIGHT;

/**
 * Refines a rough outline to the rim: edges on rays across the outline, the ellipse most of them agree on, then the ellipse
 * with the least distances, with edges that don't belong taken out. Shadow and relief are told from the rim by color where
 * the picture has any; light places it more finely where both see the same edge.
 *
 * @param planes one picture in linear light, its planes in one frame; the outline in that frame.
 * @param reach how far off the outline may be, as a share of its lesser radius.
 * @returns null when no ellipse carries half of the outline.
 */
export function refineRim(planes: LightPlanes, rough: Ellipse, reach: number = ROUGH_REACH): Rim | null {
  if (!(rough.semiMinorPx >= LEAST_RADIUS_PX)) return null;
  const seen = windowOf(planes, rough.centre, (1.1 + reach) * rough.semiMajorPx + WINDOW_MARGIN_PX);
  const local = shifted(rough, -seen.origin.xPx, -seen.origin.yPx);
  const rim = refine(seen, local, reach);
  return rim && { ...rim, ellipse: shifted(rim.ellipse, seen.origin.xPx, seen.origin.yPx) };
}

/** An outline that was not polished yet: enough to tell which places deserve a closer look. */
export interface RoughRim {
  readonly ellipse: Ellipse;
  /** 0 to 1 */
  readonly agreement: number;
  /** Share of it that lies in the picture, 0 to 1 */
  readonly visible: number;
  /** 0 to 1 */
  readonly coherence: number;
}

/** The outline that most edges about a rough one agree on, by color where it decides; at a tenth of the cost of `refineRim`. */
export function roughRim(light: LightPlanes, hues: LightPlanes | null, rough: Ellipse): RoughRim | null {
  if (!(rough.semiMinorPx >= LEAST_RADIUS_PX)) return null;
  const [{ widthPx, heightPx }] = light;
  const frame = { left: 0, top: 0, right: widthPx, bottom: heightPx };
  const byHue = hues && agree({ planes: hues, frame }, rough, ROUGH_REACH, HUE);
  if (hues && byHue && byHue.agreement >= HUE_DECIDES)
    return { ...byHue, coherence: stepAround({ planes: hues, frame }, byHue.ellipse).coherence };
  const byLight = agree({ planes: light, frame }, rough, ROUGH_REACH, LIGHT);
  return byLight && { ...byLight, coherence: stepAround({ planes: light, frame }, byLight.ellipse).coherence };
}

/** The same by light alone, also of a coin of which no more than `leastVisible` of its way lies in the picture. */
export function arcOf(light: LightPlanes, rough: Ellipse, leastVisible: number): RoughRim | null {
  const [{ widthPx, heightPx }] = light;
  const scene = { planes: light, frame: { left: 0, top: 0, right: widthPx, bottom: heightPx } };
  const arc = agree(scene, rough, ROUGH_REACH, LIGHT, leastVisible);
  return arc && { ...arc, coherence: stepAround(scene, arc.ellipse).coherence };
}

function refine(light: Scene, rough: Ellipse, reach: number): Rim | null {
  const planes = huesOf(light.planes);
  const hues = planes && { planes, frame: light.frame };
  const byHue = hues && agree(hues, rough, reach, HUE);
  if (hues && byHue && byHue.agreement >= HUE_DECIDES) {
    const colored = polish(hues, byHue, HUE);
    if (colored) {
      const lit = polish(light, { ...byHue, ellipse: colored.ellipse }, LIGHT);
      return lit && sameEdge(colored.ellipse, lit) ? lit : colored;
    }
  }
  const byLight = agree(light, rough, reach, LIGHT);
  return byLight && polish(light, byLight, LIGHT);
}

function agree(
  scene: Scene,
  rough: Ellipse,
  reach: number,
  { roughSigmaPx, alongShare }: Senses,
  leastVisible: number = LEAST_VISIBLE,
): Outline | null {
  const sigmaPx = Math.max(roughSigmaPx, 0.02 * rough.semiMinorPx);
  const across = { reachPx: reach * rough.semiMinorPx, sigmaPx, alongShare };
  return consensusEllipse(raysAcross(scene, rough, ROUGH_RAYS, across), rough, seededGenerator(SEED), leastVisible);
}

function polish(
  scene: Scene,
  { ellipse: agreed, agreement }: Outline,
  { fineSigmaPx, alongShare, sweeps, systematicPx }: Senses,
): Rim | null {
  let ellipse = agreed;
  let fit: EllipseFit | null = null;
  let belonging: readonly ImagePoint[] = [];
  let visible = 0;
  for (const sweepPx of sweeps) {
    const reachPx = Math.min(sweepPx, 0.25 * ellipse.semiMinorPx);
    const rays = visibleOf(raysAcross(scene, ellipse, FINE_RAYS, { reachPx, sigmaPx: fineSigmaPx, alongShare }));
    visible = rays.length;
    if (visible < LEAST_VISIBLE * FINE_RAYS) return null;
    belonging = likelySteps(rays, ellipse, reachPx);
    fit = robustFit(belonging, ellipse, visible / 3);
    if (!fit) return null;
    ellipse = fit.ellipse;
  }
  if (!fit) return null;
  const limit = Math.max(0.8, 3 * fit.residualPx);
  const along = belonging.filter((at) => Math.abs(misfitPx(ellipse, at)) < limit).length;
  if (along < visible / 2) return null;
  return {
    ellipse,
    residualPx: fit.residualPx,
    standardUncertaintyPx: uncertaintyOf(fit, Math.hypot(systematicPx, unsettledPx(ellipse))),
    settled: false,
    visible: visible / FINE_RAYS,
    coverage: along / visible,
    agreement,
    ...stepAround(scene, ellipse),
  };
}

/**
 * Thickness over radius of the thickest coins of the table (20 euro cent, 2 x 2.14 / 22.25) and a little more: seen at an angle
 * whose sine is the eccentricity of the rim, the wall shows this times that, in radii.
 */
const THICKEST = 0.22;

/** How much of the wall of the thickest coin is seen on its near side, px. */
export function wallPx({ semiMajorPx, semiMinorPx }: Ellipse): number {
  return THICKEST * Math.sqrt(semiMajorPx ** 2 - semiMinorPx ** 2);
}

/** Own assumptions, held against rendered coins: what of the wall and, of a shadow about it, of the radius displaces a rim. */
const WALL_TAKEN_SHARE = 0.16;
const SHADOW_TAKEN_SHARE = 0.01;

/** Standard uncertainty, px, of an outline that may be that of rim and wall, or of shadow, anywhere around. */
export function unsettledPx(ellipse: Ellipse): number {
  return Math.hypot(WALL_TAKEN_SHARE * wallPx(ellipse), SHADOW_TAKEN_SHARE * ellipse.semiMinorPx);
}

const UNKNOWNS = 5;
/** Variances of middle (right, down) and radii (greater, lesser) from n points all around a circle, times n. */
const ALL_AROUND = [2, 2, 3, 3];

/**
 * Standard uncertainty of the rim as a whole, px. An arc leaves the middle and the radii less certain than the whole way round,
 * and what bevel and wear displace is enlarged alike: by the fit's own covariance over that of points all around a circle.
 */
export function uncertaintyOf({ residualPx, cofactor, degreesOfFreedom }: EllipseFit, systematicPx: number): number {
  const points = degreesOfFreedom + UNKNOWNS;
  const enlarged = Math.sqrt(points * Math.max(...ALL_AROUND.map((share, index) => (cofactor[index]?.[index] ?? 0) / share)));
  return Math.max(1, enlarged) * Math.hypot(residualPx / Math.sqrt(points / RAYS_PER_INDEPENDENT_ONE), systematicPx);
}

/** The mean step from a little inside to a little outside, and its length over the mean length of the steps. */
export function stepAround({ planes, frame }: Scene, ellipse: Ellipse): Pick<Rim, 'coherence' | 'contrast'> {
  const { centre, semiMajorPx, semiMinorPx } = ellipse;
  const aside = Math.max(1.5, STEP_SHARE * semiMinorPx);
  const around = (byPx: number): Ellipse => ({ ...ellipse, centre, semiMajorPx: semiMajorPx + byPx, semiMinorPx: semiMinorPx + byPx });
  const sum = planes.map(() => 0);
  let lengths = 0;
  let sectors = 0;
  for (let sector = 0; sector < STEP_SECTORS; sector += 1) {
    if (!isWithin(frame, pointOn(around(aside), (2 * Math.PI * (sector + 0.5)) / STEP_SECTORS))) continue;
    sectors += 1;
    const steps = planes.map((plane) => sectorMean(plane, around(aside), sector) - sectorMean(plane, around(-aside), sector));
    steps.forEach((step, index) => {
      sum[index] = (sum[index] ?? 0) + step;
    });
    lengths += Math.hypot(...steps);
  }
  const total = Math.hypot(...sum);
  return { coherence: lengths > 0 ? total / lengths : 0, contrast: sectors > 0 ? total / sectors : 0 };
}

const STEP_SHARE = 0.06;
const STEP_SECTORS = 36;
const SAMPLES_PER_SECTOR = 8;

function sectorMean(plane: LightPlanes[number], ellipse: Ellipse, sector: number): number {
  let sum = 0;
  for (let index = 0; index < SAMPLES_PER_SECTOR; index += 1) {
    const { xPx, yPx } = pointOn(ellipse, (2 * Math.PI * (sector + index / SAMPLES_PER_SECTOR)) / STEP_SECTORS);
    sum += lightAt(plane, xPx, yPx);
  }
  return sum / SAMPLES_PER_SECTOR;
}

/** Of each ray the step that is strong and near, both. */
export function likelySteps(rays: readonly Ray[], ellipse: Ellipse, reachPx: number): readonly ImagePoint[] {
  return rays.flatMap((ray) => {
    const weight = ({ at, strength }: Ray[number]): number => strength * Math.exp(-2 * (misfitPx(ellipse, at) / reachPx) ** 2);
    const [likeliest] = ray.toSorted((one, other) => weight(other) - weight(one));
    return likeliest ? [likeliest.at] : [];
  });
}

/** A rim is not known to a thousandth of a pixel: the fit need not settle further, as a share of its major axis. */
const SETTLED = 1e-6;

/** Fits again and again to the points that lie within four median distances; null when fewer than `least` do. */
export function robustFit(points: readonly ImagePoint[], start: Ellipse, least: number): EllipseFit | null {
  let ellipse = start;
  let fit: EllipseFit | null = null;
  let used: readonly ImagePoint[] = [];
  for (let round = 0; round < 4; round += 1) {
    const misfits = points.map((at) => Math.abs(misfitPx(ellipse, at)));
    const limit = Math.max(0.5, 4 * median(misfits));
    const kept = points.filter((_, index) => (misfits[index] ?? 0) < limit);
    if (kept.length < least) return null;
    // The same points give the same ellipse.
    if (fit && kept.length === used.length && kept.every((at, index) => at === used[index])) break;
    used = kept;
    fit = geometricEllipse(kept, ellipse, SETTLED);
    if (!fit) return null;
    ellipse = fit.ellipse;
  }
  return fit;
}

function sameEdge(colored: Ellipse, lit: Rim): boolean {
  const apart = Math.max(
    Math.hypot(colored.centre.xPx - lit.ellipse.centre.xPx, colored.centre.yPx - lit.ellipse.centre.yPx),
    Math.abs(colored.semiMajorPx - lit.ellipse.semiMajorPx),
    Math.abs(colored.semiMinorPx - lit.ellipse.semiMinorPx),
  );
  return lit.coverage >= SAME_EDGE_SHARE && apart <= SAME_EDGE_PX;
}

export function shifted(ellipse: Ellipse, xPx: number, yPx: number): Ellipse {
  return { ...ellipse, centre: { xPx: ellipse.centre.xPx + xPx, yPx: ellipse.centre.yPx + yPx } };
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
