import { type Lens, poseOf } from '../measuring/camera.ts';
import { type Corners, checkCorners, orderCorners } from '../measuring/corners.ts';
import { fitHomography } from '../measuring/homography.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { rectangleOutline } from '../measuring/rectangleView.ts';
import { type Segment, turnBetween } from './strongLines.ts';

/** A quadrilateral of straight edges that may be the picture of a rectangle. */
export interface Quadrilateral {
  /** In the order a rectangle scale wants. */
  readonly corners: Corners;
  /** Mean share of its sides with an edge under it, 0 to 1. */
  readonly coverage: number;
  /** How far its proportions are from those of the rectangle before this lens: 0 fits. */
  readonly misfit: number;
}

interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

interface Pair {
  readonly one: Segment;
  readonly other: Segment;
  readonly angle: number;
}

const PARALLEL_RAD = 0.4;
const UPRIGHT_RAD = 1;
/** Opposite sides lie at least so far apart, as a share of the longer one. */
const LEAST_APART = 0.35;
const LEAST_SIDE_COVERAGE = 0.35;
/** An edge may run on past the corner by this share of the side; a longer one belongs to something else. */
const LONGEST_OVERSHOOT = 0.15;
/** Coarse corners lie off by a pixel or two of a small picture, and lenses distort. */
const LARGEST_MISFIT = 0.08;
/** Without a focal length the proportions of the picture are those of the object only within its tilt. */
const LARGEST_MISFIT_WITHOUT_LENS = 0.25;

/** Best first: most of its outline seen, and fitting best. */
export function rectanglesAmong(segments: readonly Segment[], size: Size, lens: Lens): readonly Quadrilateral[] {
  const pairs = parallelPairs(segments);
  const found: Quadrilateral[] = [];
  pairs.forEach((first, index) => {
    for (const second of pairs.slice(index + 1)) {
      if (turnBetween(first.angle, second.angle) < UPRIGHT_RAD) continue;
      const met = [
        meeting(first.one, second.one),
        meeting(first.one, second.other),
        meeting(first.other, second.other),
        meeting(first.other, second.one),
      ];
      const [a, b, c, d] = met;
      if (!a || !b || !c || !d) continue;
      const covered = [covers(first.one, a, b), covers(second.other, b, c), covers(first.other, c, d), covers(second.one, d, a)];
      if (covered.some((share) => share < LEAST_SIDE_COVERAGE)) continue;
      const corners = orderCorners([a, b, c, d], size);
      if (!corners.ok) continue;
      const misfit = misfitOf(corners.value, size, lens);
      if (misfit > (lens.known ? LARGEST_MISFIT : LARGEST_MISFIT_WITHOUT_LENS)) continue;
      found.push({ corners: corners.value, coverage: covered.reduce((sum, share) => sum + share, 0) / 4, misfit });
    }
  });
  return found.sort((one, other) => worthOf(other, lens) - worthOf(one, lens));
}

function worthOf({ coverage, misfit }: Quadrilateral, lens: Lens): number {
  return coverage - misfit / (lens.known ? LARGEST_MISFIT : LARGEST_MISFIT_WITHOUT_LENS) / 2;
}

function angleOf({ from, to }: Segment): number {
  return Math.atan2(to.yPx - from.yPx, to.xPx - from.xPx);
}

function parallelPairs(segments: readonly Segment[]): readonly Pair[] {
  return segments.flatMap((one, index) =>
    segments.slice(index + 1).flatMap((other): Pair[] => {
      if (turnBetween(angleOf(one), angleOf(other)) > PARALLEL_RAD) return [];
      const longest = Math.max(one.lengthPx, other.lengthPx);
      const middle = { xPx: (other.from.xPx + other.to.xPx) / 2, yPx: (other.from.yPx + other.to.yPx) / 2 };
      const apart =
        Math.abs((middle.yPx - one.from.yPx) * (one.to.xPx - one.from.xPx) - (middle.xPx - one.from.xPx) * (one.to.yPx - one.from.yPx)) /
        one.lengthPx;
      return apart >= LEAST_APART * longest ? [{ one, other, angle: angleOf(one) }] : [];
    }),
  );
}

function meeting(one: Segment, other: Segment): ImagePoint | null {
  const [ax, ay] = [one.to.xPx - one.from.xPx, one.to.yPx - one.from.yPx];
  const [bx, by] = [other.to.xPx - other.from.xPx, other.to.yPx - other.from.yPx];
  const sine = ax * by - ay * bx;
  if (Math.abs(sine) < 1e-9) return null;
  const along = ((other.from.xPx - one.from.xPx) * by - (other.from.yPx - one.from.yPx) * bx) / sine;
  return { xPx: one.from.xPx + along * ax, yPx: one.from.yPx + along * ay };
}

/** Share of the side between two corners with the segment's edge under it; 0 when the segment runs on far past a corner. */
function covers(segment: Segment, from: ImagePoint, to: ImagePoint): number {
  const [dx, dy] = [to.xPx - from.xPx, to.yPx - from.yPx];
  const square = dx * dx + dy * dy;
  const place = (at: ImagePoint): number => ((at.xPx - from.xPx) * dx + (at.yPx - from.yPx) * dy) / square;
  const [start, end] = [place(segment.from), place(segment.to)].toSorted((one, other) => one - other);
  if (start === undefined || end === undefined || start < -LONGEST_OVERSHOOT || end > 1 + LONGEST_OVERSHOOT) return 0;
  return Math.max(0, Math.min(1, end) - Math.max(0, start)) * segment.coverage;
}

/** Of a quadrilateral from the picture of a rectangle of this size: relative error of the aspect and cosine at the corner, together. */
export function misfitOf(corners: Corners, size: Size, lens: Lens): number {
  if (!checkCorners(corners).ok) return Number.POSITIVE_INFINITY;
  const fit = fitHomography(rectangleOutline(size), corners);
  if (!fit) return Number.POSITIVE_INFINITY;
  const pose = poseOf(fit.matrix, lens, { xMm: size.widthMm / 2, yMm: size.heightMm / 2 });
  return Math.hypot(Math.log(pose.aspect), pose.skew);
}
