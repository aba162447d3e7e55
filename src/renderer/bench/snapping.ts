import type { Direction } from '../../domain/finding/profile.ts';
import type { Snapped } from '../../domain/finding/snap.ts';
import { mostReachPx, pointOnEdgePx } from '../../domain/measuring/edgeDefinition.ts';
import {
  type CarapaceLandmark,
  FREE_DISTANCES,
  freeLandmarks,
  type LandmarkName,
  type Landmarks,
  LEG_IDS,
  LEG_JOINTS,
  legLandmark,
  type PlacedLandmark,
  pointOf,
} from '../../domain/measuring/landmarks.ts';
import { coarseAimPx } from '../../domain/measuring/pointingError.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';
import { DEFAULT_POINTING_PX } from '../../domain/measuring/reading.ts';
import { landmarksOf } from './document.ts';
import type { BenchState } from './store.ts';

/** Moves a point along a direction of the picture, at most so far, to an edge of the photo; null where there is none. */
export type EdgeFinder = (at: ImagePoint, direction: Direction | null, reachPx: number) => Snapped | null;

const PARTNERS: Readonly<Record<CarapaceLandmark, CarapaceLandmark>> = {
  'carapace-front': 'carapace-rear',
  'carapace-rear': 'carapace-front',
  'carapace-left': 'carapace-right',
  'carapace-right': 'carapace-left',
};

/** How far a point goes to an edge, in CSS pixels: what the hand could have missed. */
const REACH_CSS = 4;
/** In pixels of the photo: less finds nothing, more, whatever the hand, finds another margin. */
const LEAST_REACH_PX = 4;
const MOST_REACH_PX = 12;
/** Nearer than this two points give no direction. */
const LEAST_APART_PX = 2;

/**
 * Where a click for a landmark falls: on the edge beside it, along the length the landmark ends, if points go to edges now and it
 * is known there, all in all, no worse than where the hand has put it; else where it was made. A joint of a leg is no edge: going to
 * one made joints worse (own measurement on the rendered photos).
 */
export function fallingPoint(
  state: Pick<BenchState, 'snaps' | 'snapIsHeldBack' | 'findEdge' | 'view' | 'edited'>,
  name: LandmarkName,
  at: ImagePoint,
): Pick<PlacedLandmark, 'at' | 'pointingPx' | 'aimedPx'> {
  const { document } = state.edited;
  const statedPx = document.pointingPx ?? DEFAULT_POINTING_PX;
  const aimedPx = coarseAimPx(state.view.zoom, statedPx);
  const handPx = aimedPx ?? statedPx;
  const coarsely = aimedPx === null ? {} : { aimedPx };
  const byHand = { at, ...coarsely };
  if (!state.snaps || state.snapIsHeldBack || state.findEdge === null || isLegJoint(name)) return byHand;
  // In a picture shown small the screen's reach is many pixels, and an edge so far from the click is another one.
  const farthestPx = Math.min(MOST_REACH_PX, mostReachPx(statedPx));
  const reachPx = Math.max(LEAST_REACH_PX, Math.min(farthestPx, REACH_CSS / state.view.zoom));
  const found = state.findEdge(at, measureDirection(name, at, landmarksOf(document)), reachPx);
  // An edge that is ragged, or one of two, is known worse than what the hand does without it.
  return found !== null && pointOnEdgePx(found.edgePx, handPx) <= handPx ? { at: found.at, pointingPx: found.edgePx, ...coarsely } : byHand;
}

/**
 * The direction, in the picture, of the length that a landmark ends: from its fellow across the carapace, or from the other end of
 * a distance. Null while that one is not placed.
 */
export function measureDirection(name: LandmarkName, at: ImagePoint, landmarks: Landmarks): Direction | null {
  const other = neighborOf(name);
  const from = other === null ? null : pointOf(landmarks[other]);
  if (from === null) return null;
  const [x, y] = [at.xPx - from.xPx, at.yPx - from.yPx];
  const length = Math.hypot(x, y);
  return length < LEAST_APART_PX ? null : { x: x / length, y: y / length };
}

function isLegJoint(name: LandmarkName): boolean {
  return LEG_IDS.some((leg) => LEG_JOINTS.some((joint) => legLandmark(leg, joint) === name));
}

function neighborOf(name: LandmarkName): LandmarkName | null {
  if (name in PARTNERS) return PARTNERS[name as CarapaceLandmark];
  for (const distance of FREE_DISTANCES) {
    const ends = freeLandmarks(distance);
    if (ends.some((end) => end === name)) return ends.find((end) => end !== name) ?? null;
  }
  return null;
}
