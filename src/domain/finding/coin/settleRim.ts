import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import type { LightPlanes } from '../light.ts';
import { closeUpOf } from './closeUp.ts';
import { misfitPx, raysAcross, type Scene, visibleOf } from './consensus.ts';
import type { EllipseFit } from './fitEllipse.ts';
import { huesOf } from './hue.ts';
import { BY_HUE, BY_LIGHT, type ClosedOutline, closedOutlines } from './outlines.ts';
import type { Rim } from './rim.ts';
import { uncertaintyOf, unsettledPx, wallPx } from './rimUncertainty.ts';
import { likelySteps, robustFit } from './robustEllipse.ts';
import { stepAround } from './stepAround.ts';

/** An outline closed so far is a silhouette of color, or a rim in light. */
const CLOSED_BY_HUE = 0.75;
const CLOSED_BY_LIGHT = 0.6;
const CLOSED_ALONE = 0.75;
/** Color is blurred, and the camera keeps it at half the resolution: it is known to this, px. */
const HUE_PX = 1.8;
/** In the worst case, where light tells what color does not. */
const BLURRED_HUE_PX = 2 * HUE_PX;
/** Of outlines about as closed as the best, the outermost is the rim: borders are engraved inside. */
const ABOUT_AS_CLOSED = 0.92;
/** What bevel and wear displace as a whole: 0.3 px, or 0.07 mm of a coin as large as a euro. Own assumption. */
const SYSTEMATIC_PX = 0.3;
const SYSTEMATIC_SHARE = 0.006;
/** Known by color alone, the wall of the near side belongs to the outline. */
const SYSTEMATIC_HUE_PX = 0.9;
/** A rim closed this far is told from its wall; the less it is, the more of that may have been taken for it. */
const CLOSED_FOR_SURE = 0.9;
const CLOSED_FOR_CHANCE = 0.7;
/** For its last place a rim is looked at this closely: its bevel and the wall below it are each about a pixel wide. */
const CLOSE = { sigmaPx: 0.7, alongShare: 0.1, most: 6, weakest: 0.08 } as const;
const CLOSE_REACHES_PX = [2, 1.5];
const CLOSE_RAYS = 240;

/** A rim with how far it is an edge all around. */
export interface SettledRim extends Rim {
  /** 0 to 1 */
  readonly closed: number;
}

/**
 * Tells the upper rim of a coin from what lies about it: its wall on the near side, its shadow, its engraved border. By color, where
 * the coin has one of its own, the silhouette of rim and wall is known, and the rim is the closed edge within it that touches it on
 * the far side. In a gray picture it is the outline most closed.
 *
 * @param rough within a tenth of the rim.
 * @returns null when no edge is closed enough.
 */
export function settleRim(whole: LightPlanes, rough: Ellipse): SettledRim | null {
  const { scene: small, factor, inScene, inPicture } = closeUpOf(whole, rough);
  const chosen = chooseAbout(small, inScene(rough));
  if (!chosen) return null;
  const { outline, systematicPx, doubtPx, isRim } = chosen;
  const fit = (isRim ? closeFit(small, outline.ellipse) : null) ?? robustFit(outline.points, outline.ellipse, outline.points.length / 3);
  if (!fit) return null;
  const { coherence, contrast } = stepAround(small, fit.ellipse);
  return {
    ellipse: inPicture(fit.ellipse),
    residualPx: factor * fit.residualPx,
    standardUncertaintyPx: factor * Math.hypot(uncertaintyOf(fit, systematicPx), doubtPx),
    settled: isRim && doubtPx < unsettledPx(outline.ellipse),
    visible: outline.visible,
    coverage: outline.coverage,
    agreement: outline.closed,
    closed: outline.closed,
    coherence,
    contrast,
  };
}

/** The same outline from what a closer look shows next to it. */
function closeFit(scene: Scene, outline: Ellipse): EllipseFit | null {
  let fit: EllipseFit | null = null;
  for (const reachPx of CLOSE_REACHES_PX) {
    const ellipse: Ellipse = fit?.ellipse ?? outline;
    const rays = visibleOf(raysAcross(scene, ellipse, CLOSE_RAYS, { ...CLOSE, reachPx }));
    fit = robustFit(likelySteps(rays, ellipse, reachPx), ellipse, rays.length / 3);
    if (!fit) return null;
  }
  return fit;
}

interface Chosen {
  readonly outline: ClosedOutline;
  readonly systematicPx: number;
  /** What another outline that might be the rim would displace. */
  readonly doubtPx: number;
  /** Not the silhouette of rim and wall together. */
  readonly isRim: boolean;
}

function chooseAbout(scene: Scene, rough: Ellipse): Chosen | null {
  const planes = huesOf(scene.planes);
  const [silhouette] = planes ? closedOutlines({ planes, frame: scene.frame }, rough, BY_HUE) : [];
  const seen = closedOutlines(scene, rough, BY_LIGHT);
  if (silhouette && silhouette.closed >= CLOSED_BY_HUE) {
    // From the silhouette the rim is near, wherever the rough outline was.
    const near = [...closedOutlines(scene, silhouette.ellipse, BY_LIGHT), ...seen].filter(({ closed }) => closed >= CLOSED_BY_LIGHT);
    const [nearest, farther] = [HUE_PX, BLURRED_HUE_PX].map((tolerancePx) =>
      outermostOf(near.filter(({ ellipse }) => isRimOf(silhouette.ellipse, ellipse, tolerancePx))),
    );
    const rim = farther && farther.closed >= CLOSED_ALONE && (nearest?.closed ?? 0) < CLOSED_ALONE ? farther : nearest;
    if (rim) return asRim(rim, null);
    return { outline: silhouette, systematicPx: SYSTEMATIC_HUE_PX, doubtPx: unsettledPx(silhouette.ellipse), isRim: false };
  }
  const rim = seen.some(({ closed }) => closed >= CLOSED_ALONE) ? outermostOf(seen) : null;
  return rim && asRim(rim, mostClosedAlike(seen).find((outline) => outline !== rim) ?? null);
}

function mostClosedAlike(seen: readonly ClosedOutline[]): readonly ClosedOutline[] {
  const least = ABOUT_AS_CLOSED * Math.max(0, ...seen.map(({ closed }) => closed));
  return seen.filter(({ closed }) => closed >= least);
}

function outermostOf(seen: readonly ClosedOutline[]): ClosedOutline | null {
  const [outermost] = mostClosedAlike(seen).toSorted((one, other) => other.ellipse.semiMinorPx - one.ellipse.semiMinorPx);
  return outermost ?? null;
}

function asRim(outline: ClosedOutline, rival: ClosedOutline | null): Chosen {
  const { ellipse, closed } = outline;
  const doubt = Math.min(1, Math.max(0, (CLOSED_FOR_SURE - closed) / (CLOSED_FOR_SURE - CLOSED_FOR_CHANCE)));
  return {
    outline,
    systematicPx: Math.max(SYSTEMATIC_PX, SYSTEMATIC_SHARE * ellipse.semiMinorPx),
    doubtPx: Math.hypot(doubt * unsettledPx(ellipse), rival ? apartPx(ellipse, rival.ellipse) / 2 : 0),
    isRim: true,
  };
}

const COMPARED_POINTS = 48;

/** Distances of one outline's points inside of another, px. */
function insetsPx(outer: Ellipse, inner: Ellipse): readonly number[] {
  return Array.from({ length: COMPARED_POINTS }, (_, index) => -misfitPx(outer, pointOn(inner, (2 * Math.PI * index) / COMPARED_POINTS)));
}

/** Root of the mean square of their distances, px. */
function apartPx(one: Ellipse, other: Ellipse): number {
  return Math.sqrt(insetsPx(one, other).reduce((sum, inset) => sum + inset * inset, 0) / COMPARED_POINTS);
}

/** Within the silhouette everywhere, touching it on one side, and no farther from it on the other than the thickest coin's wall. */
function isRimOf(silhouette: Ellipse, rim: Ellipse, tolerancePx: number): boolean {
  const insets = insetsPx(silhouette, rim).toSorted((one, other) => one - other);
  const [least = 0, touching = 0, most = 0] = [insets[0], insets[COMPARED_POINTS / 4], insets.at(-1)];
  return least > -tolerancePx && touching < tolerancePx && most < wallPx(rim) + tolerancePx;
}
