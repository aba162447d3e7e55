import { type Lens, lensOf, type PictureFacts } from '../measuring/camera.ts';
import { type Corners, checkCorners } from '../measuring/corners.ts';
import { EDGE_UNCERTAINTY_MM } from '../measuring/knownRectangles.ts';
import { type Result, succeed } from '../result.ts';
import { findCoarsely, sidesOf } from './coarseRectangle.ts';
import { constructCorners } from './constructCorners.ts';
import { footOf } from './foot.ts';
import { type LightPlanes, reducePlanes } from './light.ts';
import { offLinePx } from './line.ts';
import { fitLitSides } from './litSides.ts';
import { misfitOf } from './quadrilaterals.ts';
import { eachSide, enlargedRectangle, type FoundRectangle, type Four, longestPx, type RectangleShape, scaledCorners } from './rectangle.ts';
import { type FoundSide, findSides } from './sideFit.ts';
import type { ExpectedSide } from './sideSearch.ts';

/** The longest side is worked on at about this many px. */
const WORKING_SIDE_PX = 700;
/** A blur has no quite such form as is fitted to it: own judgment, from rendered photos that were made smaller, softer and paler. */
const FORM_UNCERTAINTY_PX = 0.15;
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
    const unseenPx = Math.hypot(EDGE_UNCERTAINTY_MM * pxPerMm, FORM_UNCERTAINTY_PX);
    return constructCorners(
      eachSide(sides, (side) => side && widenedSide(side, unseenPx)),
      expected,
      shape,
      picture,
    );
  };
  const suits = (found: Result<FoundRectangle>): number => (found.ok ? misfitOf(found.value.corners, shape, lens) : Infinity);
  const thicknessPx = (corners: Corners): number => (shape.thicknessMm * longestPx(corners)) / Math.max(shape.widthMm, shape.heightMm);
  const coarse = findCoarsely(planes, handles, shape, lens);
  const first = constructed(findSides(planes, sidesOf(coarse, shape, 0.005), thicknessPx(coarse), FIRST_REACH_PX), coarse);
  if (!first.ok) return first;
  const { corners, sides } = first.value;
  const [a, b, c, d] = sidesOf(corners, shape, 0.005);
  const expected: Four<ExpectedSide | null> = [sides[0] && a, sides[1] && b, sides[2] && c, sides[3] && d];
  const lit = (reachPx: number) => fitLitSides(planes, expected, footOf(corners, shape, lens), thicknessPx(corners), reachPx);
  const second = lit(SECOND_REACH_PX);
  const losesSide = expected.some((side, index) => side !== null && second[0][index] === null);
  const [one, other] = losesSide ? lit(THIRD_REACH_PX) : second;
  if (!other) return constructed(one, corners);
  const isOther = tellsByProportions(one, other, lens) && suits(constructed(other, corners)) < suits(constructed(one, corners));
  return constructed(isOther ? doubted(other, one) : doubted(one, other), corners);
}

/** Where the lens is not known, or a side is missing and is placed by the proportions, they don't tell which of two fits is right. */
function tellsByProportions(one: Four<FoundSide | null>, other: Four<FoundSide | null>, lens: Lens): boolean {
  return lens.known && [...one, ...other].every((side) => side !== null);
}

/** Two ways to explain the same light differ in where the sides are: each may be anywhere between (rectangular, JCGM 100:2008, 4.3.7). */
function doubted(sides: Four<FoundSide | null>, others: Four<FoundSide | null>): Four<FoundSide | null> {
  const widened = (index: 0 | 1 | 2 | 3): FoundSide | null => {
    const [side, other] = [sides[index], others[index]];
    return side && other && widenedSide(side, offLinePx(side.line.through, other.line) / Math.sqrt(12));
  };
  return [widened(0), widened(1), widened(2), widened(3)];
}

/** What the scatter along a side can't show moves the whole side. */
function widenedSide(side: FoundSide, byPx: number): FoundSide {
  return { ...side, line: { ...side.line, acrossUncertaintyPx: Math.hypot(side.line.acrossUncertaintyPx, byPx) } };
}
