import { type Lens, poseOf } from '../measuring/camera.ts';
import { type Corners, checkCorners } from '../measuring/corners.ts';
import { fitHomography } from '../measuring/homography.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { rectangleOutline } from '../measuring/rectangleView.ts';
import { cornersOf } from './constructCorners.ts';
import type { LightPlanes } from './light.ts';
import type { FittedLine } from './line.ts';
import { edgeSearch } from './profile.ts';
import { eachSide, type Four, longestPx, type RectangleShape } from './rectangle.ts';
import { type ExpectedSide, type LineHypothesis, profilesAlong, type SideProfiles, strongestLines } from './sideSearch.ts';

/** Handles may lie 3 % of the longest side off; the search reaches a little further. */
const HANDLE_REACH = 0.04;
const HANDLE_ERROR = 0.03;
/** Radii may exceed the nominal one by this much (ISO/IEC 7810: 3.48 mm at most for 3.18 mm). */
const RADIUS_ALLOWANCE_MM = 0.3;
const PLACES = 72;
const LINES_KEPT = 5;

/** The sides between four corners, without what is rounded at their ends and `marginShare` of the longest side more. */
export function sidesOf(corners: Corners, { widthMm, heightMm, cornerRadiusMm }: RectangleShape, marginShare: number): Four<ExpectedSide> {
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

/** The best quadrilateral among the straight lines near the handles; a handle's own side where no line is better. */
export function findCoarsely(planes: LightPlanes, handles: Corners, shape: RectangleShape, lens: Lens): Corners {
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
