import type { Ellipse } from '../../measuring/ellipse.ts';
import type { ImagePoint } from '../../measuring/points.ts';
import { medianOf } from '../../numerics/median.ts';
import { misfitPx, type Ray } from './consensus.ts';
import { type EllipseFit, geometricEllipse } from './fitEllipse.ts';

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
    const limit = Math.max(0.5, 4 * medianOf(misfits));
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
