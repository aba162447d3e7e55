import type { ImagePoint } from '../measuring/points.ts';
import { medianOf } from '../numerics/median.ts';
import type { LightPlanes } from './light.ts';
import { type EdgeSearch, type Step, stepsAcross } from './profile.ts';

/** Where a straight side of an object is expected in the picture; its normal points away from the object. */
export interface ExpectedSide {
  readonly from: ImagePoint;
  readonly to: ImagePoint;
  /** Shares of the side, 0 to 1, between which it is straight. */
  readonly straightFrom: number;
  readonly straightTo: number;
}

/** One place along an expected side with the steps found across it. */
export interface SideSample {
  readonly alongPx: number;
  readonly steps: readonly Step[];
}

export interface SideProfiles {
  readonly origin: ImagePoint;
  readonly alongX: number;
  readonly alongY: number;
  readonly samples: readonly SideSample[];
  /** Places asked for, those outside the picture included. */
  readonly wanted: number;
}

/** A straight line among the steps of a side: offset across = `startPx` + `slope` x along. */
export interface LineHypothesis {
  readonly startPx: number;
  readonly slope: number;
  /** 0 to 1: share of the wanted places at which it has a step, each counted by its nearness and strength. */
  readonly support: number;
  readonly endPx: number;
}

/** Strongest steps kept at one place. */
const STEPS_KEPT = 6;

export function profilesAlong(planes: LightPlanes, side: ExpectedSide, places: number, search: EdgeSearch): SideProfiles {
  const { from, to, straightFrom, straightTo } = side;
  const length = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
  const alongX = (to.xPx - from.xPx) / length;
  const alongY = (to.yPx - from.yPx) / length;
  // The object's outline runs clockwise on the screen, so away from it is left of the way along.
  const normal = { x: alongY, y: -alongX };
  const samples: SideSample[] = [];
  for (let place = 0; place < places; place += 1) {
    const alongPx = length * (straightFrom + ((straightTo - straightFrom) * (place + 0.5)) / places);
    const steps = stepsAcross(planes, from.xPx + alongPx * alongX, from.yPx + alongPx * alongY, normal, search);
    if (steps.length > 0) samples.push({ alongPx, steps: steps.slice(0, STEPS_KEPT) });
  }
  return { origin: from, alongX, alongY, samples, wanted: places };
}

/** Places from each half of a side that lines are drawn through. */
const ANCHORS = 14;

/**
 * The straight lines with the most support among the steps of a side, best first, no two nearly the same. Every pair of
 * steps at chosen places is tried (the consensus of Fischler & Bolles 1981, Communications of the ACM 24:381, without chance).
 *
 * @param tolerancePx steps further from a line do not support it.
 */
export function strongestLines({ samples, wanted }: SideProfiles, tolerancePx: number, count: number): readonly LineHypothesis[] {
  if (samples.length < 4) return [];
  const reference = medianOf(samples.map(({ steps }) => steps[0]?.strength ?? 0)) / 2;
  const half = Math.floor(samples.length / 2);
  const chosen = (from: number, to: number): readonly SideSample[] => {
    const stride = Math.max(1, Math.floor((to - from) / ANCHORS));
    return samples.slice(from, to).filter((_, index) => index % stride === 0);
  };
  const lastPx = samples.at(-1)?.alongPx ?? 0;
  const found: LineHypothesis[] = [];
  for (const near of chosen(0, half)) {
    for (const far of chosen(half, samples.length)) {
      for (const one of near.steps) {
        for (const other of far.steps) {
          const slope = (other.offsetPx - one.offsetPx) / (far.alongPx - near.alongPx);
          const startPx = one.offsetPx - slope * near.alongPx;
          const support = supportOf(samples, startPx, slope, tolerancePx, reference) / wanted;
          found.push({ startPx, slope, support, endPx: startPx + slope * lastPx });
        }
      }
    }
  }
  found.sort((one, other) => other.support - one.support);
  const kept: LineHypothesis[] = [];
  for (const line of found) {
    if (kept.length === count) break;
    const known = kept.some(
      (other) => Math.abs(other.startPx - line.startPx) < 2 * tolerancePx && Math.abs(other.endPx - line.endPx) < 2 * tolerancePx,
    );
    if (!known) kept.push(line);
  }
  return kept;
}

function supportOf(samples: readonly SideSample[], startPx: number, slope: number, tolerancePx: number, reference: number): number {
  let sum = 0;
  for (const { alongPx, steps } of samples) {
    const at = startPx + slope * alongPx;
    let best = 0;
    for (const { offsetPx, strength } of steps) {
      const ratio = (offsetPx - at) / tolerancePx;
      if (ratio * ratio < 1) best = Math.max(best, (1 - ratio * ratio) * Math.min(1, strength / reference));
    }
    sum += best;
  }
  return sum;
}
