import type { EdgePoint } from '../measuring/calibration.ts';
import { type Lens, lensOf, type PictureFacts, poseOf } from '../measuring/camera.ts';
import { type Corners, checkCorners, distance } from '../measuring/corners.ts';
import { fitHomography } from '../measuring/homography.ts';
import { EDGE_UNCERTAINTY_MM } from '../measuring/knownRectangles.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { rectangleOutline } from '../measuring/rectangleView.ts';
import { type Result, succeed } from '../result.ts';
import { constructCorners, cornersOf } from './constructCorners.ts';
import { footOf } from './foot.ts';
import { type LightPlanes, reducePlanes } from './light.ts';
import type { FittedLine, PointCovariance } from './line.ts';
import { fitLitSides } from './litSides.ts';
import { edgeSearch } from './profile.ts';
import { type FoundSide, findSides } from './sideFit.ts';
import { type ExpectedSide, type LineHypothesis, profilesAlong, type SideProfiles, strongestLines } from './sideSearch.ts';

/** A flat rectangle, its corners perhaps rounded. */
export interface RectangleShape {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cornerRadiusMm: number;
  /** Of its face above what it lies on: how far its shadow reaches. */
  readonly thicknessMm: number;
}

export interface FoundRectangle {
  /** Constructed: where the straight sides meet. In the order of the handles. */
  readonly corners: Corners;
  /** Of each corner, from the scatter of its two sides. */
  readonly covariances: Four<PointCovariance>;
  /** From the first to the second corner, and on. One may be null: then its corners follow from the object's known size and the focal length. */
  readonly sides: Four<FoundSide | null>;
}

export type Four<Value> = readonly [Value, Value, Value, Value];

/** Handles may lie 3 % of the longest side off; the search reaches a little further. */
const HANDLE_REACH = 0.04;
const HANDLE_ERROR = 0.03;
/** Radii may exceed the nominal one by this much (ISO/IEC 7810: 3.48 mm at most for 3.18 mm). */
const RADIUS_ALLOWANCE_MM = 0.3;
/** The longest side is worked on at about this many px. */
const WORKING_SIDE_PX = 700;
const PLACES = 72;
const LINES_KEPT = 5;
/** How far the sides are looked for from the lines of the first search, then from those of the first fit; px for each 10 px of thickness. */
const FIRST_REACH_PX = 7;
const SECOND_REACH_PX = 2.5;
/** Where that loses a side: the first fit took the foot of its shadow for it, as it may where no fourth side tells the proportions. */
const THIRD_REACH_PX = 5;

/**
 * Finds a rectangle's four straight sides near four rough handles and constructs its corners. The sides are those of its
 * upper face: its own shadow beside it is modeled, not taken for the side. Large pictures are averaged down first: their blur is
 * wider than their pixels, and what remains uncertain is the object's edge, not the place of light.
 *
 * @param planes linear red, green and blue; luminance alone where there is no color.
 * @param handles clockwise on the screen, each within 3 % of the longest side of its corner; the first side is the width.
 * @returns `sides-not-found` with the numbers of the sides when fewer than three are seen, or three and no focal length is
 * known; the failures of `checkCorners`.
 */
export function refineRectangle(
  planes: LightPlanes,
  handles: Corners,
  shape: RectangleShape,
  picture: PictureFacts,
): Result<FoundRectangle> {
  const checked = checkCorners(handles);
  if (!checked.ok) return checked;
  const factor = workingFactor(handles);
  const facts = { ...picture, widthPx: picture.widthPx / factor, heightPx: picture.heightPx / factor };
  const found = refineAtScale(reducePlanes(planes, factor), scaledCorners(handles, 1 / factor), shape, facts);
  return found.ok ? succeed(enlargedRectangle(found.value, factor)) : found;
}

/** By how much a picture may be reduced before this rectangle is sought in it: `refineRectangle` does so itself. */
export function workingFactor(handles: Corners): number {
  return Math.max(1, Math.round(longestPx(handles) / WORKING_SIDE_PX));
}

function refineAtScale(planes: LightPlanes, handles: Corners, shape: RectangleShape, picture: PictureFacts): Result<FoundRectangle> {
  const lens = lensOf(picture);
  const constructed = (sides: Four<FoundSide | null>, expected: Corners): Result<FoundRectangle> => {
    const pxPerMm = longestPx(expected) / Math.max(shape.widthMm, shape.heightMm);
    return constructCorners(
      eachSide(sides, (side) => side && withEdgeUncertainty(side, pxPerMm)),
      expected,
      shape,
      picture,
    );
  };
  const thicknessPx = (corners: Corners): number => (shape.thicknessMm * longestPx(corners)) / Math.max(shape.widthMm, shape.heightMm);
  const coarse = findCoarsely(planes, handles, shape, lens);
  const first = constructed(findSides(planes, sidesOf(coarse, shape, 0.005), thicknessPx(coarse), FIRST_REACH_PX), coarse);
  if (!first.ok) return first;
  const { corners, sides } = first.value;
  const [a, b, c, d] = sidesOf(corners, shape, 0.005);
  const expected: Four<ExpectedSide | null> = [sides[0] && a, sides[1] && b, sides[2] && c, sides[3] && d];
  const lit = (reachPx: number) => fitLitSides(planes, expected, footOf(corners, shape, lens), thicknessPx(corners), reachPx);
  const second = lit(SECOND_REACH_PX);
  const losesSide = expected.some((side, index) => side !== null && second[index] === null);
  return constructed(losesSide ? lit(THIRD_REACH_PX) : second, corners);
}

/** What the scatter along a side can't show moves the whole side. */
function withEdgeUncertainty(side: FoundSide, pxPerMm: number): FoundSide {
  const acrossUncertaintyPx = Math.hypot(side.line.acrossUncertaintyPx, EDGE_UNCERTAINTY_MM * pxPerMm);
  return { ...side, line: { ...side.line, acrossUncertaintyPx } };
}

function scaledPoint({ xPx, yPx }: ImagePoint, factor: number): ImagePoint {
  return { xPx: factor * xPx, yPx: factor * yPx };
}

function scaledCorners(corners: Corners, factor: number): Corners {
  return [
    scaledPoint(corners[0], factor),
    scaledPoint(corners[1], factor),
    scaledPoint(corners[2], factor),
    scaledPoint(corners[3], factor),
  ];
}

export function enlargedRectangle({ corners, covariances, sides }: FoundRectangle, factor: number): FoundRectangle {
  const square = factor * factor;
  const side = (found: FoundSide | null): FoundSide | null =>
    found && {
      ...found,
      line: {
        ...found.line,
        through: scaledPoint(found.line.through, factor),
        acrossUncertaintyPx: factor * found.line.acrossUncertaintyPx,
        residualPx: factor * found.line.residualPx,
      },
      points: found.points.map((point) => enlargedEdgePoint(point, factor)),
    };
  return {
    corners: scaledCorners(corners, factor),
    covariances: eachSide(covariances, ({ xx, xy, yy }) => ({ xx: square * xx, xy: square * xy, yy: square * yy })),
    sides: eachSide(sides, side),
  };
}

export function enlargedEdgePoint({ xPx, yPx, acrossPx }: EdgePoint, factor: number): EdgePoint {
  return { xPx: factor * xPx, yPx: factor * yPx, acrossPx: factor * acrossPx };
}

/** Standard uncertainty of one corner per coordinate, px: the root of the mean of all variances. */
export function cornerUncertaintyPx({ covariances }: Pick<FoundRectangle, 'covariances'>): number {
  return Math.sqrt(covariances.reduce((sum, { xx, yy }) => sum + (xx + yy) / 2, 0) / 4);
}

function sidesOf(corners: Corners, { widthMm, heightMm, cornerRadiusMm }: RectangleShape, marginShare: number): Four<ExpectedSide> {
  const [a, b, c, d] = corners;
  const trimMm = cornerRadiusMm + (cornerRadiusMm > 0 ? RADIUS_ALLOWANCE_MM : 0) + marginShare * Math.max(widthMm, heightMm);
  const side = (from: ImagePoint, to: ImagePoint, lengthMm: number): ExpectedSide => ({
    from,
    to,
    straightFrom: trimMm / lengthMm,
    straightTo: 1 - trimMm / lengthMm,
  });
  return [side(a, b, widthMm), side(b, c, heightMm), side(c, d, widthMm), side(d, a, heightMm)];
}

function longestPx([a, b, c, d]: Corners): number {
  return Math.max(distance(a, b), distance(b, c), distance(c, d), distance(d, a));
}

/** The best quadrilateral among the straight lines near the handles; a handle's own side where no line is better. */
function findCoarsely(planes: LightPlanes, handles: Corners, shape: RectangleShape, lens: Lens): Corners {
  const reachPx = HANDLE_REACH * longestPx(handles);
  const stepPx = Math.max(0.5, reachPx / 80);
  const search = edgeSearch({ reachPx, stepPx, sigmaPx: 1.6 * stepPx, alongPx: 3 * stepPx });
  const [tops, rights, bottoms, lefts] = eachSide(sidesOf(handles, shape, HANDLE_ERROR), (side) => {
    const profiles = profilesAlong(planes, side, PLACES, search);
    const lines = strongestLines(profiles, 2 * stepPx, LINES_KEPT);
    return [...lines, HANDLE_SIDE].map((line) => ({ support: line.support, line: asFitted(profiles, line) }));
  });
  let best = { corners: handles, score: -Infinity };
  for (const top of tops)
    for (const right of rights)
      for (const bottom of bottoms)
        for (const left of lefts) {
          const met = cornersOf(top.line, right.line, bottom.line, left.line);
          if (!met) continue;
          const corners: Corners = [met[0].at, met[1].at, met[2].at, met[3].at];
          const score = top.support + right.support + bottom.support + left.support - shapePenalty(corners, shape, lens);
          if (score > best.score) best = { corners, score };
        }
  return best.corners;
}

const HANDLE_SIDE: LineHypothesis = { startPx: 0, slope: 0, support: 0, endPx: 0 };

function eachSide<From, To>([a, b, c, d]: Four<From>, of: (side: From) => To): Four<To> {
  return [of(a), of(b), of(c), of(d)];
}

/** Misfit of the proportions at which a quadrilateral counts as another object. */
const SHAPE_SCALE = 0.02;

function shapePenalty(corners: Corners, { widthMm, heightMm }: RectangleShape, lens: Lens): number {
  if (!lens.known || !checkCorners(corners).ok) return 0;
  const plane = rectangleOutline({ widthMm, heightMm });
  const fit = fitHomography(plane, corners);
  if (!fit) return 4;
  const pose = poseOf(fit.matrix, lens, { xMm: widthMm / 2, yMm: heightMm / 2 });
  const misfit = Math.hypot(pose.aspect - 1, pose.skew) / SHAPE_SCALE;
  return Math.min(2, 0.5 * misfit * misfit);
}

function asFitted({ origin, alongX, alongY }: SideProfiles, { startPx, slope }: LineHypothesis): FittedLine {
  const length = Math.hypot(1, slope);
  return {
    through: { xPx: origin.xPx + startPx * alongY, yPx: origin.yPx - startPx * alongX },
    alongX: (alongX + slope * alongY) / length,
    alongY: (alongY - slope * alongX) / length,
    acrossUncertaintyPx: 0,
    angleUncertaintyRad: 0,
    residualPx: 0,
    used: 0,
  };
}
