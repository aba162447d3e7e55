import type { PointsScale, RectangleScale, RuleTicksScale } from '../calibration.ts';
import { lensOf, type PictureFacts } from '../camera.ts';
import { fitHomography } from '../homography.ts';
import type { ImagePoint } from '../points.ts';
import { truePlaces } from '../pointsView.ts';
import type { JointModel } from './jointFit.ts';
import { radialShiftOf, unshifted } from './radialShift.ts';
import { sideLine } from './sides.ts';

/** What is straight, flat or even in space, as residuals of a lens that bends it. */
export interface Straightness extends JointModel {
  /** What the object itself may do to the residuals, each one standard uncertainty large. */
  readonly ownErrors: readonly (readonly number[])[];
  /** A larger `excess` of the fit comes from something else than the lens and the finding of the points. */
  readonly largestExcess: number;
}

/** Residuals larger than this many times the uncertainty of single edge points come from something else. */
const LARGEST_EDGE_SCATTER = 3;
/**
 * Points and ticks that scatter by more come from something else: they are found to a few hundredths of a pixel. Own judgment. No
 * multiple of the stated uncertainty, which in older marks is this very scatter.
 */
const LARGEST_POINT_SCATTER_PX = 0.5;

/** A side's bow over its length, standard uncertainty: 0.02 mm on a bank card. Own assumption. */
const BOW_SHARE = 2.5e-4;
/** How far a card or a sheet bulges in its middle, over its length: 0.09 mm on a bank card. Own assumption. */
const BULGE_SHARE = 1e-3;
/** The same of a rule, which is stiffer. Own assumption. */
const RULE_BULGE_SHARE = 3e-4;
/** How unevenly a rule is divided, over its length, besides what scatters from tick to tick: 0.015 mm on 150 mm. Own assumption. */
const UNEVEN_SHARE = 1e-4;
/** Slopes of the plane times half diagonals over focal lengths are of this size; keeps them from running away. */
const SLOPE_SIZE = 0.5;

/** Undoes a shift of the corner by a share of its distance; in half diagonals from the middle. */
type Undo = (at: ImagePoint, cornerShare: number) => Pair;
type Pair = readonly [x: number, y: number];

function undoing(picture: PictureFacts): Undo {
  const { centre, cornerPx } = radialShiftOf(picture, 0);
  return (at, cornerShare) => {
    const { xPx, yPx } = unshifted(at, { centre, cornerPx, cornerShare });
    return [(xPx - centre.xPx) / cornerPx, (yPx - centre.yPx) / cornerPx];
  };
}

/**
 * How far a bulge of `share` of the object's length moves its points outward in the picture, as a share of their distance from the
 * middle: what rises towards the camera is seen larger by its height over the camera's.
 */
function bulge(share: number, lengthPx: number, picture: PictureFacts): number {
  return (share * lengthPx) / lensOf(picture).focalPx;
}

/**
 * Sides of a rectangle: straight lines in space stay straight before a lens without distortion (the plumb line method: Brown
 * 1971, Photogrammetric Engineering 37:855; Devernay & Faugeras 2001, Machine Vision and Applications 13:14).
 */
export function straightSides({ sidePoints }: RectangleScale, picture: PictureFacts): Straightness | null {
  const sides = (sidePoints ?? []).flatMap((points) => {
    const line = sideLine(points);
    return line ? [{ points, line }] : [];
  });
  if (sides.length === 0) return null;
  const undo = undoing(picture);
  const { centre, cornerPx } = radialShiftOf(picture, 0);
  const seen = sides.flatMap(({ points, line }, side) =>
    points.map((at) => {
      const along = (at.xPx - line.through.xPx) * line.alongX + (at.yPx - line.through.yPx) * line.alongY;
      return { at, side, line, share: along / line.halfPx, sigma: at.acrossPx / cornerPx };
    }),
  );
  const across = (line: (typeof seen)[number]['line'], [x, y]: Pair): number =>
    (y - (line.through.yPx - centre.yPx) / cornerPx) * line.alongX - (x - (line.through.xPx - centre.xPx) / cornerPx) * line.alongY;
  const longestPx = Math.max(...sides.map(({ line }) => 2 * line.halfPx));
  const rise = bulge(BULGE_SHARE, longestPx, picture);
  return {
    start: Array.from({ length: 2 * sides.length + 1 }, () => 0),
    residuals: (parameters) => {
      const cornerShare = parameters.at(-1) ?? 0;
      return seen.map(({ at, side, line, share, sigma }) => {
        const offset = (parameters[2 * side] ?? 0) + (parameters[2 * side + 1] ?? 0) * share;
        return (across(line, undo(at, cornerShare)) - offset) / sigma;
      });
    },
    largestExcess: LARGEST_EDGE_SCATTER ** 2,
    ownErrors: [
      ...sides.map(({ line }, bowed) =>
        seen.map(({ side, share, sigma }) => (side === bowed ? (BOW_SHARE * 2 * line.halfPx * (1 - share * share)) / cornerPx / sigma : 0)),
      ),
      // The middle of a side rises, its ends lie on the table; a card whose whole face is higher shows no bow.
      seen.map(({ at, line, share, sigma }) => {
        const outward = ((at.yPx - centre.yPx) * line.alongX - (at.xPx - centre.xPx) * line.alongY) / cornerPx;
        return (rise * outward * (1 - share * share)) / sigma;
      }),
    ],
  };
}

/** Points of a flat pattern: one homography holds for all of them (Zhang 2000, IEEE PAMI 22:1330, section 3.3). */
export function flatPoints(marks: PointsScale, picture: PictureFacts): Straightness | null {
  const undo = undoing(picture);
  const { cornerPx } = radialShiftOf(picture, 0);
  const places = truePlaces(marks);
  const middle = { xMm: mean(places.map(({ xMm }) => xMm)), yMm: mean(places.map(({ yMm }) => yMm)) };
  const halfMm = Math.max(...places.map(({ xMm, yMm }) => Math.hypot(xMm - middle.xMm, yMm - middle.yMm)));
  const plane = places.map((place) => ({ xMm: (place.xMm - middle.xMm) / halfMm, yMm: (place.yMm - middle.yMm) / halfMm }));
  const seen = marks.points.map(({ at }) => {
    const [xPx, yPx] = undo(at, 0);
    return { xPx, yPx };
  });
  const fit = halfMm > 0 && plane.length > 4 ? fitHomography(plane, seen) : null;
  if (!fit) return null;
  const sigma = marks.pointPx / cornerPx;
  const spanPx = Math.max(...marks.points.map(({ at }) => Math.hypot(at.xPx - middlePx(marks).xPx, at.yPx - middlePx(marks).yPx)));
  const rise = bulge(BULGE_SHARE, 2 * spanPx, picture);
  return {
    start: [...fit.matrix.slice(0, 8), 0],
    residuals: (parameters) => {
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, cornerShare = 0] = parameters;
      return plane.flatMap(({ xMm, yMm }, index) => {
        const at = marks.points[index]?.at;
        if (!at) return [];
        const [x, y] = undo(at, cornerShare);
        const w = g * xMm + h * yMm + 1;
        return [(x - (a * xMm + b * yMm + c) / w) / sigma, (y - (d * xMm + e * yMm + f) / w) / sigma];
      });
    },
    largestExcess: (LARGEST_POINT_SCATTER_PX / marks.pointPx) ** 2,
    ownErrors: [
      plane.flatMap(({ xMm, yMm }, index) => {
        const { xPx, yPx } = seen[index] ?? { xPx: 0, yPx: 0 };
        const height = rise * (1 - xMm * xMm - yMm * yMm);
        return [(height * xPx) / sigma, (height * yPx) / sigma];
      }),
    ],
  };
}

function middlePx({ points }: PointsScale): ImagePoint {
  return { xPx: mean(points.map(({ at }) => at.xPx)), yPx: mean(points.map(({ at }) => at.yPx)) };
}

/**
 * Ticks of a rule: straight lines of one plane, evenly spaced, so that their number is a ratio of two linear functions of the
 * picture (Hartley & Zisserman, Multiple View Geometry, 2nd edition, section 8.6).
 */
export function evenTicks(marks: RuleTicksScale, picture: PictureFacts): Straightness | null {
  const undo = undoing(picture);
  const { cornerPx } = radialShiftOf(picture, 0);
  const numbers = marks.ticks.map(({ number }) => number);
  const [first, last] = [Math.min(...numbers), Math.max(...numbers)];
  const half = (last - first) / 2;
  const seen = marks.ticks.flatMap(({ number, from, to }) => [from, to].map((at) => ({ at, share: (number - (first + last) / 2) / half })));
  const start = affineStart(seen.map(({ at, share }) => ({ at: undo(at, 0), share })));
  if (!start || !(half > 0)) return null;
  const sigma = marks.tickPx / cornerPx;
  const [startX, startY] = start;
  const perShare = 1 / Math.hypot(startX, startY);
  const rise = bulge(RULE_BULGE_SHARE, 2 * perShare * cornerPx, picture);
  const unknown = Array.from({ length: 2 }, () => 0);
  return {
    start: [...start, ...unknown, 0],
    residuals: (parameters) => {
      const [a = 0, b = 0, c = 0, d = 0, e = 0, cornerShare = 0] = parameters;
      const off = seen.map(({ at, share }) => {
        const [x, y] = undo(at, cornerShare);
        const w = 1 + d * x + e * y;
        const is = (a * x + b * y + c) / w;
        return (is - share) / (Math.hypot(a - is * d, b - is * e) / w) / sigma;
      });
      return [...off, d / SLOPE_SIZE, e / SLOPE_SIZE];
    },
    largestExcess: (LARGEST_POINT_SCATTER_PX / marks.tickPx) ** 2,
    ownErrors: [
      // The smooth unevenness that neither a scale nor a tilt can make: an odd cubic, its largest value one.
      [...seen.map(({ share }) => (UNEVEN_SHARE * 2 * perShare * 2.6 * share * (1 - share * share)) / sigma), ...unknown],
      [
        ...seen.map(({ at, share }) => {
          const [x, y] = undo(at, 0);
          return (rise * (1 - share * share) * (x * startX + y * startY) * perShare) / sigma;
        }),
        ...unknown,
      ],
    ],
  };
}

/** The linear function of the picture that runs from -1 at the first tick to 1 at the last, without a slope across the ticks' lean. */
function affineStart(seen: readonly { readonly at: Pair; readonly share: number }[]): readonly [number, number, number] | null {
  const x = mean(seen.map(({ at }) => at[0]));
  const y = mean(seen.map(({ at }) => at[1]));
  const alongX = mean(seen.map(({ at, share }) => (at[0] - x) * share));
  const alongY = mean(seen.map(({ at, share }) => (at[1] - y) * share));
  const square = mean(seen.map(({ share }) => share * share));
  const length = Math.hypot(alongX, alongY) / square;
  if (!(length > 0)) return null;
  const [a, b] = [alongX / square / length ** 2, alongY / square / length ** 2];
  return [a, b, mean(seen.map(({ share }) => share)) - a * x - b * y];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
