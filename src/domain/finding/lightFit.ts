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
const FINEST_PX = 0.02;

/** The form of one side's edge in a scene. */
export function formIn(scene: Scene, index: number, footPx: number, { pixelBlurPx }: Pick<Trial, 'pixelBlurPx'>): EdgeForm {
  const edge = defocusedEdge(scene.diskPx, pixelBlurPx);
  const reach = (index < 2 ? 1 : -1) * (index % 2 === 0 ? scene.firstShadowPx : scene.secondShadowPx);
  return shadedForm(edge, litGround(edge, footPx + reach, scene.spreadPx), scene.ambient, blurOf(scene.diskPx, pixelBlurPx));
}

/** Standard deviation of a disk's projection is half of its radius. */
export function blurOf(diskPx: number, pixelBlurPx: number): number {
  return Math.hypot(pixelBlurPx, diskPx / 2);
}

/** The scene that leaves the least of the light beside all sides unexplained: from a coarse grid, then parameter by parameter. */
export function fitScene(sides: readonly SideOnFoot[], trial: Trial): SceneFit {
  const { thicknessPx, pixelBlurPx } = trial;
  const learning = sides.map(
    (side): SideOnFoot => side && { ...side, stretches: side.stretches.filter((_, index) => index % LEARNING_STRIDE === 1) },
  );
  const costOf = (scene: Scene, among: readonly SideOnFoot[], only: (index: number) => boolean): number =>
    among.reduce((sum, side, index) => {
      if (!side || !only(index)) return sum;
      return sum + leastSquares(side.stretches, formIn(scene, index, side.footPx, trial), trial);
    }, 0);
  const plain = { firstShadowPx: -1e3, secondShadowPx: -1e3, spreadPx: 1, ambient: 1 };
  const disks = sides.flatMap((_, index) => {
    if (!learning[index]) return [];
    return [
      best(
        DISKS.map((disk) => disk * Math.max(1, pixelBlurPx / 0.42)),
        (diskPx) => costOf({ ...plain, diskPx }, learning, (at) => at === index),
      ),
    ];
  });
  const sorted = disks.toSorted((one, other) => one - other);
  const diskPx = sorted[1] ?? sorted[0] ?? 0;
  const shadows = SHADOWS.map((share) => share * thicknessPx);
  const starts = SPREADS.flatMap((spread) =>
    AMBIENTS.map((ambient): Scene => {
      const base: Scene = { ...plain, diskPx, spreadPx: spread * thicknessPx, ambient };
      const firstShadowPx = best(shadows, (px) => costOf({ ...base, firstShadowPx: px }, learning, (at) => at % 2 === 0));
      const secondShadowPx = best(shadows, (px) => costOf({ ...base, secondShadowPx: px }, learning, (at) => at % 2 === 1));
      return { ...base, firstShadowPx, secondShadowPx };
    }),
  );
  const everywhere = (): boolean => true;
  const start = best(starts, (scene) => costOf(scene, learning, everywhere));
  return refined(start, (scene) => costOf(scene, sides, everywhere), thicknessPx);
}

function refined(start: Scene, costOf: (scene: Scene) => number, thicknessPx: number): SceneFit {
  let fit: SceneFit = { scene: start, sumOfSquares: costOf(start) };
  let halvings = 0;
  for (let round = 0; round < ROUNDS && halvings <= HALVINGS; round += 1) {
    const share = 0.5 ** halvings;
    let moved = false;
    for (const move of movesOf(share, thicknessPx)) {
      const scene = move(fit.scene);
      if (!isPossible(scene)) continue;
      const sumOfSquares = costOf(scene);
      if (sumOfSquares >= fit.sumOfSquares) continue;
      fit = { scene, sumOfSquares };
      moved = true;
    }
    if (!moved) halvings += 1;
  }
  return fit;
}

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

/** All stretches of a side lie equally far from where it was expected. */
function leastSquares(stretches: readonly Stretch[], form: EdgeForm, { reachPx, gridPx }: Trial): number {
  const at = (offsetPx: number): number => stretches.reduce((sum, { profile }) => sum + fitEdgeAt(profile, offsetPx, form).sumOfSquares, 0);
  let least = { offsetPx: 0, squares: at(0) };
  const attempt = (offsetPx: number): void => {
    const squares = at(offsetPx);
    if (squares < least.squares) least = { offsetPx, squares };
  };
  for (let offset = gridPx; offset <= reachPx; offset += gridPx) {
    attempt(offset);
    attempt(-offset);
  }
  for (let width = gridPx / 2; width > FINEST_PX; width /= 2) {
    const { offsetPx } = least;
    attempt(offsetPx - width);
    attempt(offsetPx + width);
  }
  return least.squares;
}
