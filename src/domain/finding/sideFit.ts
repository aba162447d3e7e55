import type { EdgePoint } from '../measuring/calibration.ts';
import type { ImagePoint } from '../measuring/points.ts';
import {
  type EdgeFit,
  type EdgeForm,
  type EdgeProfile,
  type EdgeShape,
  fitEdge,
  fitEdgeAt,
  gaussianForm,
  meanProfile,
} from './edgeModel.ts';
import type { LightPlanes } from './light.ts';
import { type FittedLine, fitLine, offLinePx, robustScale } from './line.ts';
import type { ExpectedSide } from './sideSearch.ts';

type Four<Value> = readonly [Value, Value, Value, Value];

/** What was found of one straight side. */
export interface FoundSide {
  readonly line: FittedLine;
  /** Share of the stretches of the side that lie on the line, 0 to 1. */
  readonly support: number;
  /** Of the stretches that belong to the line, along it: a bow is still in them. */
  readonly points: readonly EdgePoint[];
}

/** Stretches a side is cut into; each gives one point. */
const STRETCHES = 12;
/** Every so many of them serve to learn the blur and the shadow. */
const LEARNING_STRIDE = 3;
const BLURS_PX = [0.5, 0.6, 0.7, 0.85, 1, 1.2, 1.5, 2, 2.5, 3.2, 4, 5, 6.5, 8];
/** No picture is sharper than its pixels and the interpolation between them. */
const LEAST_BLUR_PX = 0.42;
/** Shadows have sizes of their own, however sharp the picture is; this is what their widths are counted in at least. */
const LEAST_SHADOW_UNIT_PX = 0.75;
const SHADOW_WIDTHS = [0.5, 1, 1.5, 2, 3, 4, 5, 6, 8];
const SHADOW_SOFTNESS = [1, 2];
/** Light in the shadow of a thin object indoors, where walls and sky still light it; own assumption, and fits the wide shadows seen. */
const COMMON_SHADOW_RATIO = 0.3;
/** Shadows longer than this many thicknesses come from light so low that nobody takes pictures in it. */
const LONGEST_SHADOW = 2.5;
/** An edge that a plain step explains to this share of its height has no shadow that could be told from a blur of another form. */
const LEAST_MISFIT = 0.01;
/** A stretch whose place is less certain says nothing. */
const LARGEST_UNCERTAINTY_PX = 1.5;
const LEAST_STRETCHES = 5;
/** What the fit of one stretch does not know of: cut edges and grain; own assumption. */
const SCATTER_PX = 0.03;
/** Points nearer to their line than a few of these are never outliers. */
const LEAST_SCALE_PX = 0.05;
/** Places scattered over a larger share of the reach are chance, not an edge. */
const LARGEST_RESIDUAL_SHARE = 0.2;

export interface Stretch {
  readonly profile: EdgeProfile;
  readonly middle: ImagePoint;
}

/** A side as seen, not yet fitted. */
export interface SeenSide {
  /** Points away from the object. */
  readonly normal: { readonly x: number; readonly y: number };
  readonly stretches: readonly Stretch[];
}

interface SideStretches extends SeenSide {
  readonly single: { readonly shape: EdgeShape; readonly sumOfSquares: number } | null;
}

/**
 * Fits the straight sides of a flat object by steps of light, each with or without the object's own shadow beside it. The
 * blur is that of the whole picture, learned from the sharpest sides.
 *
 * @param sides where they are expected, within `reachPx`.
 * @param thicknessPx the object's thickness in the scale of the picture.
 * @returns null for a side that was not found.
 */
export function findSides(planes: LightPlanes, sides: Four<ExpectedSide>, thicknessPx: number, reachPx: number): Four<FoundSide | null> {
  const scale = Math.max(1, thicknessPx / 10);
  const reach = reachPx * scale;
  const windowPx = reach + 4 * scale;
  const shadowPx = LONGEST_SHADOW * thicknessPx;
  const seen = sides.map((side) => stretchesOf(planes, side, windowPx, windowPx + Math.min(shadowPx, 8 * scale), 0.5 * scale));
  const all = seen.map(({ normal, stretches }) => withSingle(normal, stretches, reach, 0.5 * scale));
  const blurs = all.flatMap(({ single }) => (single ? [single.shape.sigmaPx] : [])).toSorted((one, other) => one - other);
  const sigmaPx = Math.max(LEAST_BLUR_PX, blurs[1] ?? blurs[0] ?? LEAST_BLUR_PX);
  const shadows = all.map((side) => shadowOf(side, sigmaPx, shadowPx, reach, 0.5 * scale));
  const fitted = (index: 0 | 1 | 2 | 3): FoundSide | null => {
    const side = all[index];
    if (!side?.single) return null;
    const own = shadows[index];
    const opposite = shadows[(index + 2) % 4];
    // Light from one direction casts a thin object's shadow on one of two opposite sides at most.
    const shape = own && !(opposite && opposite.gain > own.gain) ? own.shape : side.single.shape;
    return fitSide(side, gaussianForm(shape), reach, 0.5 * scale);
  };
  return [fitted(0), fitted(1), fitted(2), fitted(3)];
}

export function stretchesOf(
  planes: LightPlanes,
  { from, to, straightFrom, straightTo }: ExpectedSide,
  insidePx: number,
  outsidePx: number,
  stepPx: number,
): SeenSide {
  const length = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
  const [alongX, alongY] = [(to.xPx - from.xPx) / length, (to.yPx - from.yPx) / length];
  const normal = { x: alongY, y: -alongX };
  const each = ((straightTo - straightFrom) * length) / STRETCHES;
  const stretches = Array.from({ length: STRETCHES }, (_, index) => {
    const start = straightFrom * length + index * each;
    const at = (along: number): ImagePoint => ({ xPx: from.xPx + along * alongX, yPx: from.yPx + along * alongY });
    const profile = meanProfile(planes, at(start), each, normal, insidePx, outsidePx, stepPx);
    return profile && { profile, middle: at(start + each / 2) };
  }).filter((stretch) => stretch !== null);
  return { normal, stretches };
}

function withSingle(normal: SideStretches['normal'], stretches: readonly Stretch[], reachPx: number, stepPx: number): SideStretches {
  if (stretches.length < LEAST_STRETCHES) return { normal, stretches, single: null };
  const learning = learners(stretches);
  const tried = (blurPx: number) => {
    const shape: EdgeShape = { sigmaPx: blurPx, shadow: null };
    return { shape, sumOfSquares: totalOf(learning, shape, reachPx, stepPx) };
  };
  let single = least(BLURS_PX.map(tried));
  // A blur between two of the list would look like a narrow shadow.
  for (let factor = 1.1; single && factor > 1.01; factor = Math.sqrt(factor)) {
    single = least([single, tried(single.shape.sigmaPx / factor), tried(single.shape.sigmaPx * factor)]);
  }
  return { normal, stretches, single };
}

function learners(stretches: readonly Stretch[]): readonly Stretch[] {
  return stretches.filter((_, index) => index % LEARNING_STRIDE === 1);
}

function totalOf(stretches: readonly Stretch[], shape: EdgeShape, reachPx: number, gridPx: number): number {
  const form = gaussianForm(shape);
  return stretches.reduce((sum, { profile }) => sum + fitEdge(profile, -reachPx, reachPx, gridPx, form).sumOfSquares, 0);
}

function least<Item extends { readonly sumOfSquares: number }>(items: readonly Item[]): Item | null {
  return items.reduce<Item | null>((best, item) => (best && best.sumOfSquares <= item.sumOfSquares ? best : item), null);
}

interface Shadow {
  readonly shape: EdgeShape;
  /** Sum of squares without the shadow over that with it, above 1. */
  readonly gain: number;
}

/** The shadow that explains a side's light best; null when it is explained better without one. */
function shadowOf({ stretches, single }: SideStretches, sigmaPx: number, shadowPx: number, reachPx: number, gridPx: number): Shadow | null {
  if (!single) return null;
  const learning = learners(stretches);
  const unitPx = Math.max(LEAST_SHADOW_UNIT_PX, sigmaPx);
  const softnesses = SHADOW_SOFTNESS.map((softness) => softness * unitPx);
  // Close to the object its shadow ends as sharply as the picture shows anything.
  if (sigmaPx < unitPx) softnesses.unshift(sigmaPx);
  const common = least(
    SHADOW_WIDTHS.filter((width) => width * unitPx <= shadowPx).flatMap((width) =>
      softnesses.map((softPx) => {
        const shape: EdgeShape = { sigmaPx, shadow: { widthPx: width * unitPx, sigmaPx: softPx, ratio: COMMON_SHADOW_RATIO } };
        return { shape, sumOfSquares: totalOf(learning, shape, reachPx, gridPx) };
      }),
    ),
  );
  const plain = totalOf(learning, { sigmaPx, shadow: null }, reachPx, gridPx);
  if (!common || common.sumOfSquares >= plain || misfitOf(learning, plain, { sigmaPx, shadow: null }, reachPx, gridPx) < LEAST_MISFIT)
    return null;
  return { shape: common.shape, gain: plain / common.sumOfSquares };
}

/** Root mean square residual as a share of the step's height, over all planes together. */
function misfitOf(stretches: readonly Stretch[], sumOfSquares: number, shape: EdgeShape, reachPx: number, gridPx: number): number {
  let samples = 0;
  let heights = 0;
  for (const { profile } of stretches) {
    const { levels } = fitEdge(profile, -reachPx, reachPx, gridPx, gaussianForm(shape));
    samples += profile.planes[0]?.length ?? 0;
    heights += levels.reduce((sum, { inside, beyond }) => sum + (beyond - inside) ** 2, 0);
  }
  return Math.sqrt(sumOfSquares / samples / (heights / stretches.length));
}

export function fitSide({ normal, stretches }: SeenSide, form: EdgeForm, reachPx: number, gridPx: number): FoundSide | null {
  const points = stretches.flatMap(({ profile, middle }) => {
    const fit = fitEdge(profile, -reachPx, reachPx, gridPx, form);
    const uncertaintyPx = uncertaintyOf(profile, fit, form);
    if (Math.abs(fit.offsetPx) >= reachPx || !(uncertaintyPx <= LARGEST_UNCERTAINTY_PX)) return [];
    const at = { xPx: middle.xPx + fit.offsetPx * normal.x, yPx: middle.yPx + fit.offsetPx * normal.y };
    return [{ at, variance: uncertaintyPx ** 2 + SCATTER_PX ** 2 }];
  });
  if (points.length < LEAST_STRETCHES) return null;
  // Where a print is about as light as the ground, a stretch says little.
  const least = Math.min(...points.map(({ variance }) => variance));
  const line = fitLine(
    points.map(({ at }) => at),
    LEAST_SCALE_PX,
    points.map(({ variance }) => least / variance),
  );
  if (!line || line.used < LEAST_STRETCHES || line.residualPx > LARGEST_RESIDUAL_SHARE * reachPx) return null;
  return { line, support: line.used / STRETCHES, points: edgePoints(points, line) };
}

/** Half of the full weight in the fit of the line (`fitLine`) ends this many robust standard deviations from it. */
const BELONGING = 2.5;

function edgePoints(points: readonly { readonly at: ImagePoint; readonly variance: number }[], line: FittedLine): readonly EdgePoint[] {
  const off = points.map(({ at }) => Math.abs(offLinePx(at, line)));
  const mostPx = BELONGING * robustScale(off, LEAST_SCALE_PX);
  return points.flatMap(({ at, variance }, index) => ((off[index] ?? 0) <= mostPx ? [{ ...at, acrossPx: Math.sqrt(variance) }] : []));
}

/** From the curvature of the sum of squares: u^2 = 2 s^2 / S'' for a least-squares estimate of one place, s^2 the residual variance. */
function uncertaintyOf(profile: EdgeProfile, { offsetPx, sumOfSquares }: EdgeFit, form: EdgeForm): number {
  const step = 0.5 * form.sigmaPx;
  const before = fitEdgeAt(profile, offsetPx - step, form).sumOfSquares;
  const after = fitEdgeAt(profile, offsetPx + step, form).sumOfSquares;
  const curvature = (before + after - 2 * sumOfSquares) / (step * step);
  const samples = profile.planes.reduce((sum, plane) => sum + plane.length, 0);
  const freedom = Math.max(1, samples - 2 * profile.planes.length - 1);
  return Math.sqrt((2 * sumOfSquares) / freedom / curvature);
}
