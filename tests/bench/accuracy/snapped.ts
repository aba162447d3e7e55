import type { LightImage, LightPlanes } from '../../../src/domain/finding/light.ts';
import { snapToEdge } from '../../../src/domain/finding/snap.ts';
import { DORSAL_SKIN_PROTOCOL, type Landmarks, pointOf } from '../../../src/domain/measuring/landmarks.ts';
import { coarseAimPx } from '../../../src/domain/measuring/pointingError.ts';
import type { BenchEntries } from '../../../src/renderer/bench/document.ts';
import { freshlyOpened } from '../../../src/renderer/bench/history.ts';
import { type EdgeFinder, fallingPoint } from '../../../src/renderer/bench/snapping.ts';
import type { RandomSource } from '../../support/random.ts';
import { clicksOn } from './lengths.ts';
import type { SeenPhoto } from './photos.ts';

/** Of each photo: finding edges takes a millisecond or two for each of some fifty points. */
const DRAWS = 20;
/** As the Bench cuts it out around a click. */
const MARGIN_PX = 12;
/** Nothing of the view but its zoom counts: a pixel of the photo for each of the screen, and a photo of 8 megapixels shown nearly whole. */
const ZOOMS = [1, 0.2];

/** Clicks with errors of the hand on the true places, each going to the edge beside it as it does on the Bench. */
export function snappedDraws(photo: SeenPhoto, pointingPx: number, random: RandomSource): readonly Landmarks[] {
  const { landmarks } = clicksOn(photo);
  const findEdge = edgesOf(photo.light.colors);
  return Array.from({ length: DRAWS }, (_, round) => {
    const zoom = ZOOMS[round % ZOOMS.length] ?? 1;
    const handPx = coarseAimPx(zoom, pointingPx) ?? pointingPx;
    let placed: Landmarks = {};
    for (const name of DORSAL_SKIN_PROTOCOL) {
      const truth = pointOf(landmarks[name]);
      if (truth === null) continue;
      const hand = { xPx: truth.xPx + random.normal(handPx), yPx: truth.yPx + random.normal(handPx) };
      const edited = freshlyOpened<BenchEntries>({ ...placed, pointingPx });
      const state = { snaps: true, snapIsHeldBack: false, findEdge, view: { zoom, offset: { xCss: 0, yCss: 0 } }, edited };
      placed = { ...placed, [name]: { state: 'placed', ...fallingPoint(state, name, hand) } };
    }
    return placed;
  });
}

function edgesOf(planes: LightPlanes): EdgeFinder {
  const { widthPx, heightPx } = planes[0];
  return (at, direction, reachPx) => {
    const half = Math.ceil(reachPx) + MARGIN_PX;
    const [left, top, side] = [Math.floor(at.xPx) - half, Math.floor(at.yPx) - half, 2 * half + 1];
    if (left < 0 || top < 0 || left + side > widthPx || top + side > heightPx) return null;
    const [first, ...others] = planes;
    const patch: LightPlanes = [cutOut(first, left, top, side), ...others.map((plane) => cutOut(plane, left, top, side))];
    const found = snapToEdge(patch, { xPx: at.xPx - left, yPx: at.yPx - top }, direction, reachPx);
    return found && { ...found, at: { xPx: found.at.xPx + left, yPx: found.at.yPx + top } };
  };
}

function cutOut({ widthPx, light }: LightImage, left: number, top: number, side: number): LightImage {
  const cut = Float32Array.from({ length: side * side }, (_, index) => {
    const row = top + Math.floor(index / side);
    return light[row * widthPx + left + (index % side)] ?? 0;
  });
  return { widthPx: side, heightPx: side, light: cut };
}
