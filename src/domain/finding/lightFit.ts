import { defocusedEdge, litGround, shadedForm } from './edgeForm.ts';
import { type EdgeForm, fitEdgeAt } from './edgeModel.ts';
import type { SeenSide, Stretch } from './sideFit.ts';

/** A side with how far outside it the object's lower rim is seen; null for one that was not found. */
export type SideOnFoot = (SeenSide & { readonly footPx: number }) | null;

/** How an object is seen and lit: what all four of its sides share. */
export interface Scene {
  /** Radius of the disk that a point out of focus becomes. */
  readonly diskPx: number;
  /** Reach of the middle of the shadow beyond the lower rim of the first and second side; beyond the opposite ones its negative. */
  readonly firstShadowPx: number;
  readonly secondShadowPx: number;
  /** Standard deviation of where the shadow ends, from the size of the lamp. */
  readonly spreadPx: number;
  /** Share of the light that comes from everywhere, 0 to 1. */
  readonly ambient: number;
}

export interface SceneFit {
  readonly scene: Scene;
  readonly sumOfSquares: number;
}

/** Where and how finely sides are tried, px. */
export interface Trial {
  readonly thicknessPx: number;
  readonly reachPx: number;
  readonly gridPx: number;
  /** No picture is sharper than its pixels and the interpolation between them. */
  readonly pixelBlurPx: number;
}

const DISKS = [0, 0.6, 0.9, 1.2, 1.6, 2, 2.5, 3, 3.5, 4, 5, 7];
/** Starts of the search, in thicknesses of the object and as shares: own assumption, from lamps to windows near by. */
const SPREADS = [0.15, 0.5];
const AMBIENTS = [0.25, 0.6];
const SHADOWS = [-2.5, -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5];
const LEAST_SPREAD_PX = 0.1;
const LEARNING_STRIDE = 3;
const HALVINGS = 4;
const ROUNDS = 14;
const FINEST_PX = 0.03;

/** The form of one side's edge in a scene, by the number of the side. */
export function formsIn(scene: Scene, pixelBlurPx: number): (index: number, footPx: number) => EdgeForm {
  const edge = defocusedEdge(scene.diskPx, pixelBlurPx);
  return (index, footPx) => {
    const reach = (index < 2 ? 1 : -1) * (index % 2 === 0 ? scene.firstShadowPx : scene.secondShadowPx);
    return shadedForm(edge, litGround(edge, footPx + reach, scene.spreadPx), scene.ambient, blurOf(scene.diskPx, pixelBlurPx));
  };
}

/** Standard deviation of a disk's projection is half of its radius. */
export function blurOf(diskPx: number, pixelBlurPx: number): number {
  return Math.hypot(pixelBlurPx, diskPx / 2);
}

/**
 * The scene that leaves the least of the light beside all sides unexplained: from a coarse grid, then parameter by parameter.
 *
 * @param like the same scene fitted to the same light in other values: it stands in for the grid, but for the share of light from all around.
 */
export function fitScene(sides: readonly SideOnFoot[], trial: Trial, like: Scene | null = null): SceneFit {
  const { thicknessPx, pixelBlurPx } = trial;
  const learning = sides.map(
    (side): SideOnFoot => side && { ...side, stretches: side.stretches.filter((_, index) => index % LEARNING_STRIDE === 1) },
  );
  const costOf = (scene: Scene, only: (index: number) => boolean): number => {
    const formOf = formsIn(scene, pixelBlurPx);
    return learning.reduce((sum, side, index) => {
      if (!side || !only(index)) return sum;
      return sum + leastSquares(side.stretches, formOf(index, side.footPx), 0, trial).sumOfSquares;
    }, 0);
  };
  if (like) {
    const starts = [like, ...AMBIENTS.map((ambient) => ({ ...like, ambient }))];
    return refined(
      best(starts, (scene) => costOf(scene, () => true)),
      learning,
      trial,
    );
  }
  const plain = { firstShadowPx: -1e3, secondShadowPx: -1e3, spreadPx: 1, ambient: 1 };
  const disks = sides.flatMap((_, index) => {
    if (!learning[index]) return [];
    return [
      best(
        DISKS.map((disk) => disk * Math.max(1, pixelBlurPx / 0.42)),
        (diskPx) => costOf({ ...plain, diskPx }, (at) => at === index),
      ),
    ];
  });
  const sorted = disks.toSorted((one, other) => one - other);
  const diskPx = sorted[1] ?? sorted[0] ?? 0;
  const shadows = SHADOWS.map((share) => share * thicknessPx);
  const starts = SPREADS.flatMap((spread) =>
    AMBIENTS.map((ambient): Scene => {
      const base: Scene = { ...plain, diskPx, spreadPx: spread * thicknessPx, ambient };
      const firstShadowPx = best(shadows, (px) => costOf({ ...base, firstShadowPx: px }, (at) => at % 2 === 0));
      const secondShadowPx = best(shadows, (px) => costOf({ ...base, secondShadowPx: px }, (at) => at % 2 === 1));
      return { ...base, firstShadowPx, secondShadowPx };
    }),
  );
  const start = best(starts, (scene) => costOf(scene, () => true));
  return refined(start, learning, trial);
}

interface Refinement extends SceneFit {
  readonly offsetsPx: readonly number[];
}

function refined(start: Scene, sides: readonly SideOnFoot[], trial: Trial): SceneFit {
  const tried = (scene: Scene, near: readonly number[], reachPx: number): Refinement => {
    const formOf = formsIn(scene, trial.pixelBlurPx);
    const fits = sides.map((side, index) =>
      side ? leastSquares(side.stretches, formOf(index, side.footPx), near[index] ?? 0, { ...trial, reachPx }) : NOTHING,
    );
    return {
      scene,
      sumOfSquares: fits.reduce((sum, { sumOfSquares }) => sum + sumOfSquares, 0),
      offsetsPx: fits.map(({ offsetPx }) => offsetPx),
    };
  };
  let fit = tried(start, [], trial.reachPx);
  let halvings = 0;
  for (let round = 0; round < ROUNDS && halvings <= HALVINGS; round += 1) {
    let moved = false;
    for (const move of movesOf(0.5 ** halvings, trial.thicknessPx)) {
      const scene = move(fit.scene);
      if (!isPossible(scene)) continue;
      // A small move of the light moves no side far.
      const other = tried(scene, fit.offsetsPx, 0);
      if (other.sumOfSquares >= fit.sumOfSquares) continue;
      fit = other;
      moved = true;
    }
    if (!moved) halvings += 1;
  }
  return fit;
}

const NOTHING: OffsetFit = { offsetPx: 0, sumOfSquares: 0 };

function movesOf(share: number, thicknessPx: number): readonly ((scene: Scene) => Scene)[] {
  return [share, -share].flatMap((step) => [
    (scene: Scene) => ({ ...scene, diskPx: scene.diskPx + 0.3 * step }),
    (scene: Scene) => ({ ...scene, spreadPx: scene.spreadPx * Math.exp(0.4 * step) }),
    (scene: Scene) => ({ ...scene, ambient: scene.ambient + 0.1 * step }),
    (scene: Scene) => ({ ...scene, firstShadowPx: scene.firstShadowPx + 0.25 * step * thicknessPx }),
    (scene: Scene) => ({ ...scene, secondShadowPx: scene.secondShadowPx + 0.25 * step * thicknessPx }),
  ]);
}

function isPossible({ diskPx, spreadPx, ambient }: Scene): boolean {
  return diskPx >= 0 && spreadPx >= LEAST_SPREAD_PX && ambient >= 0 && ambient <= 1;
}

function best<Item>(items: readonly Item[], costOf: (item: Item) => number): Item {
  const [first, ...others] = items.map((item) => ({ item, cost: costOf(item) }));
  if (!first) throw new RangeError('Expected something to choose from');
  return others.reduce((least, other) => (other.cost < least.cost ? other : least), first).item;
}

interface OffsetFit {
  readonly offsetPx: number;
  readonly sumOfSquares: number;
}

/** All stretches of a side lie equally far from where it was expected. */
function leastSquares(stretches: readonly Stretch[], form: EdgeForm, nearPx: number, { reachPx, gridPx }: Trial): OffsetFit {
  const at = (offsetPx: number): number => stretches.reduce((sum, { profile }) => sum + fitEdgeAt(profile, offsetPx, form).sumOfSquares, 0);
  let least: OffsetFit = { offsetPx: nearPx, sumOfSquares: at(nearPx) };
  const attempt = (offsetPx: number): void => {
    const sumOfSquares = at(offsetPx);
    if (sumOfSquares < least.sumOfSquares) least = { offsetPx, sumOfSquares };
  };
  for (let offset = 2 * gridPx; offset <= reachPx; offset += 2 * gridPx) {
    attempt(nearPx + offset);
    attempt(nearPx - offset);
  }
  for (let width = reachPx > 0 ? gridPx : gridPx / 2; width > FINEST_PX; width /= 2) {
    const { offsetPx } = least;
    attempt(offsetPx - width);
    if (least.offsetPx === offsetPx) attempt(offsetPx + width);
  }
  return least;
}
