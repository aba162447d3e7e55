import type { ImagePoint } from '../measuring/points.ts';
import type { LightPlanes } from './light.ts';
import { type Direction, type EdgeSearch, edgeSearch, type Step, stepsAcross } from './profile.ts';

/** A point moved to an edge. */
export interface Snapped {
  readonly at: ImagePoint;
  /** Standard uncertainty per coordinate, px: how well the edge itself is known, and that it is this edge. */
  readonly edgePx: number;
}

/** Rows beside the point, along the edge, whose steps tell how ragged it is. */
const ROWS = [-4, -2, 0, 2, 4] as const;
const LEAST_ROWS = 3;
/** A step must change the light by this share of the brightest light on its line for each pixel, or it is texture. Own judgment. */
const LEAST_SHARE = 0.02;
/** A second step that is at least so strong as a share of the first could have been the one that was meant. Own judgment. */
const RIVAL_SHARE = 0.7;
/** A step is placed no better than this, however straight it runs. Own judgment. */
const LEAST_EDGE_PX = 0.05;
/** Directions tried where none is given, over half a turn. */
const DIRECTIONS = 12;

/**
 * Moves a point along a direction to the strongest step of light within reach, a far one counting less; it keeps its place across
 * that direction.
 *
 * The uncertainty is made of how the step scatters about a line in rows beside the point and, where another step is nearly as
 * strong, of half of the way between the two. How far the edge lies from what a landmark means is not in it: `edgeDefinitionPx`.
 *
 * @param planes linear light; the point may lie anywhere in it.
 * @param direction of the measure, unit vector; null to look in all directions and take the strongest step.
 * @param reachPx how far the point may move.
 * @returns null where no step is clear enough, or the line leaves the picture.
 */
export function snapToEdge(planes: LightPlanes, at: ImagePoint, direction: Direction | null, reachPx: number): Snapped | null {
  const search = edgeSearch({ reachPx, stepPx: 0.5, sigmaPx: 1.2, alongPx: 5 });
  const candidates = direction === null ? allDirections() : [direction];
  let best: { readonly along: Direction; readonly steps: readonly Step[] } | null = null;
  for (const along of candidates) {
    const steps = stepsAcross(planes, at.xPx, at.yPx, along, search);
    const byPull = steps.toSorted((one, other) => pull(other, reachPx) - pull(one, reachPx));
    if (pullOf(byPull, reachPx) > pullOf(best?.steps ?? [], reachPx)) best = { along, steps: byPull };
  }
  const [first, second] = best?.steps ?? [];
  if (best === null || first === undefined || first.strength < LEAST_SHARE * brightest(planes)) return null;
  const raggedPx = raggedness(planes, at, best.along, first.offsetPx, search);
  if (raggedPx === null) return null;
  const isRival = second !== undefined && pull(second, reachPx) >= RIVAL_SHARE * pull(first, reachPx);
  const rivalPx = isRival ? Math.abs(second.offsetPx - first.offsetPx) / 2 : 0;
  return {
    at: { xPx: at.xPx + first.offsetPx * best.along.x, yPx: at.yPx + first.offsetPx * best.along.y },
    edgePx: Math.hypot(LEAST_EDGE_PX, raggedPx, rivalPx),
  };
}

/** A hand errs little more often than much: of two steps as strong the nearer is meant. */
function pull({ strength, offsetPx }: Step, reachPx: number): number {
  return strength * Math.exp(-2 * (offsetPx / reachPx) ** 2);
}

function pullOf([first]: readonly Step[], reachPx: number): number {
  return first === undefined ? 0 : pull(first, reachPx);
}

function allDirections(): Direction[] {
  return Array.from({ length: DIRECTIONS }, (_, index) => {
    const angle = (Math.PI * index) / DIRECTIONS;
    return { x: Math.cos(angle), y: Math.sin(angle) };
  });
}

function brightest(planes: LightPlanes): number {
  return planes.reduce((most, { light }) => light.reduce((brighter, value) => Math.max(brighter, value), most), 0);
}

/**
 * Standard deviation of the step's place in rows beside the point about the straight line through them: an edge may cross the
 * direction at any angle. Null where too few rows show the same step.
 */
function raggedness(planes: LightPlanes, at: ImagePoint, along: Direction, offsetPx: number, search: EdgeSearch): number | null {
  const rows = ROWS.flatMap((beside) => {
    const steps = stepsAcross(planes, at.xPx - beside * along.y, at.yPx + beside * along.x, along, { ...search, alongPx: 1 });
    const [nearest] = steps.toSorted((one, other) => Math.abs(one.offsetPx - offsetPx) - Math.abs(other.offsetPx - offsetPx));
    return nearest === undefined || Math.abs(nearest.offsetPx - offsetPx) > Math.abs(beside) + 1
      ? []
      : [[beside, nearest.offsetPx] as const];
  });
  if (rows.length < LEAST_ROWS) return null;
  const meanX = rows.reduce((sum, [x]) => sum + x, 0) / rows.length;
  const meanY = rows.reduce((sum, [, y]) => sum + y, 0) / rows.length;
  const spread = rows.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  const slope = rows.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) / spread;
  const squares = rows.reduce((sum, [x, y]) => sum + (y - meanY - slope * (x - meanX)) ** 2, 0);
  return Math.sqrt(squares / (rows.length - 2));
}
