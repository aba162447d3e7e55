import type { ImagePoint } from '../measuring/points.ts';
import type { EdgeMap } from './edgeMap.ts';
import { fitLine } from './line.ts';

/** A straight edge of the picture. */
export interface Segment {
  readonly from: ImagePoint;
  readonly to: ImagePoint;
  readonly lengthPx: number;
  /** Share of its length with an edge under it, 0 to 1. */
  readonly coverage: number;
}

const ANGLES = 180;
/** Edges vote for their own direction and so many degrees to both sides. */
const ANGLE_REACH = 2;
/** Lines kept are at least so far apart. */
const APART_DEGREES = 3;
const APART_PX = 4;
const NEAR_PX = 1.6;
const AGREEING_RAD = 0.2;
/** A line is cut where it has no edge for longer than this share of the picture's longest side. */
const LONGEST_GAP = 0.03;
const LEAST_COVERAGE = 0.4;

/**
 * The longest straight edges: a Hough transform over direction and distance from the center of the picture (Duda & Hart 1972,
 * Communications of the ACM 15:11) in which each edge votes near its own direction only, then a robust line through the
 * edges of each peak, cut where they end.
 *
 * @param leastPx shorter ones are left out.
 * @param count at most so many, longest first.
 */
export function strongSegments(map: EdgeMap, leastPx: number, count: number): readonly Segment[] {
  const peaks = peaksOf(votesOf(map), 3 * count);
  const segments = peaks.flatMap((peak) => segmentsOn(map, peak, leastPx));
  segments.sort((one, other) => other.lengthPx * other.coverage - one.lengthPx * one.coverage);
  const kept: Segment[] = [];
  for (const segment of segments) {
    if (kept.length === count) break;
    if (!kept.some((other) => isSame(segment, other))) kept.push(segment);
  }
  return kept;
}

interface Votes {
  readonly votes: Float32Array;
  readonly distances: number;
  readonly half: number;
  readonly centerX: number;
  readonly centerY: number;
}

interface LinePeak {
  readonly normalX: number;
  readonly normalY: number;
  readonly distancePx: number;
  readonly angle: number;
  readonly bin: number;
  readonly votes: number;
}

function votesOf({ widthPx, heightPx, strength, angle }: EdgeMap): Votes {
  const [centerX, centerY] = [widthPx / 2, heightPx / 2];
  const half = Math.ceil(Math.hypot(centerX, centerY)) + 2;
  const distances = 2 * half + 1;
  const votes = new Float32Array(ANGLES * distances);
  const cosines = Float64Array.from({ length: ANGLES }, (_, index) => Math.cos((index * Math.PI) / ANGLES));
  const sines = Float64Array.from({ length: ANGLES }, (_, index) => Math.sin((index * Math.PI) / ANGLES));
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      const at = y * widthPx + x;
      if (!((strength[at] ?? 0) > 0)) continue;
      const own = Math.round(((angle[at] ?? 0) * ANGLES) / Math.PI);
      for (let step = -ANGLE_REACH; step <= ANGLE_REACH; step += 1) {
        const index = (own + step + ANGLES) % ANGLES;
        const distance = (x + 0.5 - centerX) * (cosines[index] ?? 0) + (y + 0.5 - centerY) * (sines[index] ?? 0);
        const cell = index * distances + Math.round(distance) + half;
        votes[cell] = (votes[cell] ?? 0) + 1;
      }
    }
  }
  return { votes, distances, half, centerX, centerY };
}

/** Local maxima of neighboring cells together, most votes first. */
function peaksOf({ votes, distances, half, centerX, centerY }: Votes, count: number): readonly LinePeak[] {
  const together = (angle: number, bin: number): number => {
    const at = ((angle + ANGLES) % ANGLES) * distances + bin;
    return (votes[at - 1] ?? 0) + (votes[at] ?? 0) + (votes[at + 1] ?? 0);
  };
  const found: { angle: number; bin: number; votes: number }[] = [];
  for (let angle = 0; angle < ANGLES; angle += 1) {
    for (let bin = 1; bin + 1 < distances; bin += 1) {
      const here = together(angle, bin);
      if (here > 12 && here >= together(angle, bin - 1) && here > together(angle, bin + 1)) found.push({ angle, bin, votes: here });
    }
  }
  found.sort((one, other) => other.votes - one.votes);
  const kept: LinePeak[] = [];
  for (const { angle, bin, votes: sum } of found) {
    if (kept.length === count) break;
    const near = kept.some((other) => {
      const turn = Math.abs(other.angle - angle);
      // Half a turn further the same line has the opposite distance.
      return turn <= APART_DEGREES
        ? Math.abs(other.bin - bin) <= APART_PX
        : ANGLES - turn <= APART_DEGREES && Math.abs(other.bin - half + bin - half) <= APART_PX;
    });
    if (near) continue;
    const [normalX, normalY] = [Math.cos((angle * Math.PI) / ANGLES), Math.sin((angle * Math.PI) / ANGLES)];
    kept.push({ normalX, normalY, distancePx: bin - half + centerX * normalX + centerY * normalY, angle, bin, votes: sum });
  }
  return kept;
}

function segmentsOn(map: EdgeMap, { normalX, normalY, distancePx }: LinePeak, leastPx: number): readonly Segment[] {
  const rough = edgesNear(map, normalX, normalY, distancePx, 2 * NEAR_PX);
  const gapPx = LONGEST_GAP * Math.max(map.widthPx, map.heightPx);
  return runsOf(rough, gapPx, leastPx).flatMap((run) => {
    const line = fitLine(
      run.map(({ at }) => at),
      0.3,
    );
    if (!line) return [];
    const near = run.filter(
      ({ at }) => Math.abs((at.yPx - line.through.yPx) * line.alongX - (at.xPx - line.through.xPx) * line.alongY) <= NEAR_PX,
    );
    const places = near.map(({ at }) => (at.xPx - line.through.xPx) * line.alongX + (at.yPx - line.through.yPx) * line.alongY);
    if (places.length === 0) return [];
    const [start, end] = [Math.min(...places), Math.max(...places)];
    const lengthPx = end - start;
    const coverage = Math.min(1, new Set(places.map(Math.round)).size / Math.max(1, lengthPx));
    if (lengthPx < leastPx || coverage < LEAST_COVERAGE) return [];
    const on = (along: number): ImagePoint => ({
      xPx: line.through.xPx + along * line.alongX,
      yPx: line.through.yPx + along * line.alongY,
    });
    return [{ from: on(start), to: on(end), lengthPx, coverage }];
  });
}

interface EdgePoint {
  readonly at: ImagePoint;
  readonly along: number;
}

/** Edge pixels near a line that run along it, in order along it. */
function edgesNear(map: EdgeMap, normalX: number, normalY: number, distancePx: number, withinPx: number): readonly EdgePoint[] {
  const { widthPx, heightPx, strength, angle } = map;
  const direction = Math.atan2(normalY, normalX);
  const points: EdgePoint[] = [];
  const steep = Math.abs(normalX) > Math.abs(normalY);
  const rows = steep ? heightPx : widthPx;
  const reach = Math.ceil(withinPx / Math.max(Math.abs(normalX), Math.abs(normalY)));
  for (let row = 0; row < rows; row += 1) {
    const middle = steep ? (distancePx - (row + 0.5) * normalY) / normalX : (distancePx - (row + 0.5) * normalX) / normalY;
    for (let step = -reach; step <= reach; step += 1) {
      const column = Math.floor(middle) + step;
      const [x, y] = steep ? [column, row] : [row, column];
      if (x < 0 || y < 0 || x >= widthPx || y >= heightPx) continue;
      const at = y * widthPx + x;
      if (!((strength[at] ?? 0) > 0) || turnBetween(angle[at] ?? 0, direction) > AGREEING_RAD) continue;
      const [xPx, yPx] = [x + 0.5, y + 0.5];
      if (Math.abs(xPx * normalX + yPx * normalY - distancePx) <= withinPx)
        points.push({ at: { xPx, yPx }, along: yPx * normalX - xPx * normalY });
    }
  }
  return points.sort((one, other) => one.along - other.along);
}

/** Angle between two undirected lines, rad, 0 to pi / 2. */
export function turnBetween(one: number, other: number): number {
  const turn = Math.abs(one - other) % Math.PI;
  return Math.min(turn, Math.PI - turn);
}

function runsOf(points: readonly EdgePoint[], gapPx: number, leastPx: number): readonly (readonly EdgePoint[])[] {
  const runs: EdgePoint[][] = [];
  let run: EdgePoint[] = [];
  for (const point of points) {
    const last = run.at(-1);
    if (last && point.along - last.along > gapPx) {
      runs.push(run);
      run = [];
    }
    run.push(point);
  }
  runs.push(run);
  return runs.filter((one) => one.length >= 3 && (one.at(-1)?.along ?? 0) - (one[0]?.along ?? 0) >= leastPx);
}

function isSame(one: Segment, other: Segment): boolean {
  const near = (a: ImagePoint, b: ImagePoint): boolean => Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx) < APART_PX;
  return (near(one.from, other.from) && near(one.to, other.to)) || (near(one.from, other.to) && near(one.to, other.from));
}
