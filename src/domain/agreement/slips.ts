import { distance } from '../measuring/corners.ts';
import { ALL_LANDMARKS, type LandmarkName } from '../measuring/landmarks.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { DEFAULT_POINTING_PX } from '../measuring/reading.ts';
import { medianOf } from '../numerics/median.ts';
import { type Pass, placedByHand, scatterOf, spreadOf } from './scatter.ts';

/** A landmark that one observer put in two places of one photo, of which one is another landmark's or a stray click. */
export interface Slip<OnePass extends Pass = Pass> {
  readonly name: LandmarkName;
  /** In this pass it lies where the other one has another landmark, or far from where the other one has it. */
  readonly pass: OnePass;
  readonly other: OnePass;
  /** That other landmark; null where none lies there. */
  readonly takenFor: LandmarkName | null;
  /** Where the landmark lies in the pass and in the other one. */
  readonly places: readonly [ImagePoint, ImagePoint];
}

/** With fewer landmarks repeated beside it nothing tells how this hand scatters on this photo. */
const LEAST_BESIDE = 5;
/** A slip scatters by more than this many times what the other landmarks do: no hand does. Own judgment. */
const FAR = 10;
/** Beyond this many times it is a stray click, whatever lies there: a joint that is hard to see is still not sought so far off. Own judgment. */
const ASTRAY = 30;

/**
 * Points named wrongly in one of several passes, or put down by a stray click: not scatter of a hand, and no measure of it. Short of
 * that, scatter alone makes no slip: the point has to lie where another landmark was put.
 *
 * @param passes of any observers and photos.
 */
export function slipsIn<OnePass extends Pass>(passes: readonly OnePass[]): Slip<OnePass>[] {
  const together = Map.groupBy(passes, ({ observer, photoId }) => JSON.stringify([observer, photoId]));
  return [...together.values()].flatMap(slipsOnPhoto);
}

function slipsOnPhoto<OnePass extends Pass>(passes: readonly OnePass[]): Slip<OnePass>[] {
  const repeated = ALL_LANDMARKS.flatMap((name) => {
    const scatter = scatterOf(name, passes);
    return scatter.degreesOfFreedom > 0 ? [{ name, spreadPx: spreadOf(scatter) }] : [];
  });
  if (repeated.length <= LEAST_BESIDE) return [];
  const usualPx = Math.max(DEFAULT_POINTING_PX, medianOf(repeated.map(({ spreadPx }) => spreadPx)));
  return repeated
    .filter(({ spreadPx }) => spreadPx > FAR * usualPx)
    .flatMap(
      ({ name, spreadPx }) => slipOf(name, passes, FAR * usualPx) ?? (spreadPx > ASTRAY * usualPx ? strayOf(name, passes) : null) ?? [],
    );
}

/** @param withinPx two points no farther apart may be one place. */
function slipOf<OnePass extends Pass>(name: LandmarkName, passes: readonly OnePass[], withinPx: number): Slip<OnePass> | null {
  for (const pass of passes) {
    const at = placedByHand(name, pass);
    if (at === null) continue;
    for (const other of passes) {
      const own = other === pass ? null : placedByHand(name, other);
      if (own === null) continue;
      const apartPx = distance(at, own);
      const takenFor = ALL_LANDMARKS.find((another) => {
        const theirs = another === name ? null : placedByHand(another, other);
        return theirs !== null && distance(at, theirs) < Math.min(withinPx, apartPx);
      });
      if (takenFor !== undefined) return { name, pass, other, takenFor, places: [at, own] };
    }
  }
  return null;
}

/** The two places farthest apart; which of the two is the stray one nothing tells. */
function strayOf<OnePass extends Pass>(name: LandmarkName, passes: readonly OnePass[]): Slip<OnePass> | null {
  const places = passes.flatMap((pass) => {
    const at = placedByHand(name, pass);
    return at === null ? [] : [{ pass, at }];
  });
  const pairs = places.flatMap((one, index) => places.slice(index + 1).map((another) => ({ one, another })));
  const [farthest] = pairs.toSorted((a, b) => distance(b.one.at, b.another.at) - distance(a.one.at, a.another.at));
  if (farthest === undefined) return null;
  const { one, another } = farthest;
  return { name, pass: another.pass, other: one.pass, takenFor: null, places: [another.at, one.at] };
}
