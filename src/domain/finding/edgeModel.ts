import { isInside, type LightPlanes, lightAt } from './light.ts';
import type { Direction } from './profile.ts';

/** Mean light along lines parallel to an edge, at evenly spaced places across it: one row for each plane. */
export interface EdgeProfile {
  readonly planes: readonly Float64Array[];
  /** Of the first sample, from the middle of the line across; the others follow by `stepPx`. */
  readonly firstPx: number;
  readonly stepPx: number;
}

/**
 * Mean profile of a stretch of an edge; samples half a pixel apart.
 *
 * @param from start of the stretch; it goes `lengthPx` to the right-hand side of the normal seen along it (y down).
 * @returns null when the stretch leaves the picture.
 */
export function meanProfile(
  planes: LightPlanes,
  from: { readonly xPx: number; readonly yPx: number },
  lengthPx: number,
  normal: Direction,
  insidePx: number,
  outsidePx: number,
  stepPx: number,
): EdgeProfile | null {
  const [alongX, alongY] = [-normal.y, normal.x];
  const count = Math.floor((insidePx + outsidePx) / stepPx) + 1;
  for (const along of [0, lengthPx]) {
    for (const across of [-insidePx, outsidePx]) {
      const x = from.xPx + along * alongX + across * normal.x;
      const y = from.yPx + along * alongY + across * normal.y;
      if (!isInside(planes[0], x, y, 0.5)) return null;
    }
  }
  const rows = Math.max(1, Math.ceil(lengthPx));
  const means = planes.map((plane) => {
    const samples = new Float64Array(count);
    for (let row = 0; row < rows; row += 1) {
      const along = ((row + 0.5) * lengthPx) / rows;
      const x = from.xPx + along * alongX;
      const y = from.yPx + along * alongY;
      for (let at = 0; at < count; at += 1) {
        const across = at * stepPx - insidePx;
        samples[at] = (samples[at] ?? 0) + lightAt(plane, x + across * normal.x, y + across * normal.y) / rows;
      }
    }
    return samples;
  });
  return { planes: means, firstPx: -insidePx, stepPx };
}

/** The blur of the edge, and the strip of shadow beside it if there is one. */
export interface EdgeShape {
  /** Standard deviation of the Gaussian blur of the edge itself. */
  readonly sigmaPx: number;
  /** Light in the shadow over that beyond it, the same in every color; the shadow ends `widthPx` outside the edge in a softer step. */
  readonly shadow: { readonly widthPx: number; readonly sigmaPx: number; readonly ratio: number } | null;
}

/** How an edge looks across: shares of the light inside and beyond it, by the distance from the edge, px, outside positive. */
export interface EdgeForm {
  /** Standard deviation of its blur. */
  readonly sigmaPx: number;
  /** From 0 well inside to 1 well outside. */
  readonly edgeAt: (acrossPx: number) => number;
  /** Light of the ground over that of the lit ground, blurred over the edge as it is seen. */
  readonly groundAt: (acrossPx: number) => number;
}

/** Steps blurred by Gaussians: the edge, and where the shadow ends. */
export function gaussianForm({ sigmaPx, shadow }: EdgeShape): EdgeForm {
  const edgeAt = (acrossPx: number): number => normalDistribution(acrossPx / sigmaPx);
  if (!shadow) return { sigmaPx, edgeAt, groundAt: edgeAt };
  const endAt = (acrossPx: number): number => normalDistribution((acrossPx - shadow.widthPx) / shadow.sigmaPx);
  return { sigmaPx, edgeAt, groundAt: (acrossPx) => shadow.ratio * edgeAt(acrossPx) + (1 - shadow.ratio) * endAt(acrossPx) };
}

export interface EdgeFit {
  readonly offsetPx: number;
  readonly sumOfSquares: number;
  /** By each plane: light inside the edge, and beyond it and its shadow. */
  readonly levels: readonly { readonly inside: number; readonly beyond: number }[];
}

/**
 * Fits a step, beside it perhaps a strip of shadow, at one place across:
 * light = inside (1 - F((s - s0) / sigma)) + beyond (ratio F((s - s0) / sigma) + (1 - ratio) F((s - s0 - width) / sigma')),
 * F the normal distribution function: steps blurred by a Gaussian (the erf fit of Hagara & Kulla 2011, Radioengineering
 * 20:133). The levels are linear and solved for by projection.
 */
export function fitEdgeAt(profile: EdgeProfile, offsetPx: number, { edgeAt, groundAt }: EdgeForm): EdgeFit {
  const { firstPx, stepPx, planes } = profile;
  const count = planes[0]?.length ?? 0;
  const first = new Float64Array(count);
  const second = new Float64Array(count);
  let ff = 0;
  let fs = 0;
  let ss = 0;
  for (let at = 0; at < count; at += 1) {
    const across = firstPx + at * stepPx - offsetPx;
    const beyond = edgeAt(across);
    const ground = groundAt === edgeAt ? beyond : groundAt(across);
    first[at] = 1 - beyond;
    second[at] = ground;
    ff += (1 - beyond) * (1 - beyond);
    fs += (1 - beyond) * ground;
    ss += ground * ground;
  }
  const determinant = ff * ss - fs * fs;
  let sumOfSquares = 0;
  const levels = planes.map((samples) => {
    let squares = 0;
    let onFirst = 0;
    let onSecond = 0;
    for (let at = 0; at < count; at += 1) {
      const value = samples[at] ?? 0;
      squares += value * value;
      onFirst += value * (first[at] ?? 0);
      onSecond += value * (second[at] ?? 0);
    }
    // An edge at the very end of the window leaves one of the two levels without a sample.
    const inside = determinant > 1e-9 ? (ss * onFirst - fs * onSecond) / determinant : 0;
    const beyond = determinant > 1e-9 ? (ff * onSecond - fs * onFirst) / determinant : 0;
    sumOfSquares += squares - inside * onFirst - beyond * onSecond;
    return { inside, beyond };
  });
  return { offsetPx, sumOfSquares: Math.max(0, sumOfSquares), levels };
}

/** Beyond this many deviations F is 0 or 1 to 1e-7. */
const FAR_DEVIATIONS = 5.2;

/** F(x) within 1.5e-7 (Abramowitz & Stegun 1964, 7.1.26). */
export function normalDistribution(x: number): number {
  // Most samples of a profile lie far from its edge.
  if (x > FAR_DEVIATIONS) return 1;
  if (x < -FAR_DEVIATIONS) return 0;
  const z = Math.abs(x) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * z);
  const tail = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) * Math.exp(-z * z);
  return x < 0 ? tail / 2 : 1 - tail / 2;
}

/** The best fit among evenly spaced offsets, brought between them by a parabola through the sums of squares. */
export function fitEdge(profile: EdgeProfile, fromPx: number, toPx: number, gridPx: number, form: EdgeForm): EdgeFit {
  let best = fitEdgeAt(profile, fromPx, form);
  for (let offset = fromPx + gridPx; offset <= toPx; offset += gridPx) {
    const fit = fitEdgeAt(profile, offset, form);
    if (fit.sumOfSquares < best.sumOfSquares) best = fit;
  }
  for (let width = gridPx / 2; width > 0.01; width /= 2) {
    const before = fitEdgeAt(profile, best.offsetPx - width, form);
    const after = fitEdgeAt(profile, best.offsetPx + width, form);
    if (before.sumOfSquares < best.sumOfSquares) best = before;
    if (after.sumOfSquares < best.sumOfSquares) best = after;
  }
  return best;
}
