import type { Ellipse } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import type { LightPlanes } from '../light.ts';
import { LEAST_VISIBLE, misfitPx, type Outline, raysAcross, type Scene, visibleOf } from './consensus.ts';
import type { EllipseFit } from './fitEllipse.ts';
import { huesOf, windowOf } from './hue.ts';
import { uncertaintyOf, unsettledPx } from './rimUncertainty.ts';
import { likelySteps, robustFit } from './robustEllipse.ts';
import { agree, LEAST_RADIUS_PX, ROUGH_REACH } from './roughRim.ts';
import { HUE, HUE_DECIDES, LIGHT, type Senses } from './senses.ts';
import { type Step, stepAround } from './stepAround.ts';

/** The rim of a coin found in a picture. */
export interface Rim extends Step {
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
}

const FINE_RAYS = 240;
/** Beyond the reach the picture is needed this far: the kernel of the search, and what is averaged along an edge. */
const WINDOW_MARGIN_PX = 24;
/** Edges of light count as those of the rim when they lie this near to those of color, along this share of it. */
const SAME_EDGE_PX = 1.5;
const SAME_EDGE_SHARE = 0.7;

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
