import {
  CARAPACE_LANDMARKS,
  DORSAL_SKIN_PROTOCOL,
  FREE_DISTANCES,
  FREE_LANDMARKS,
  type FreeDistance,
  freeLandmarks,
  isFreeLandmark,
  type Landmark,
  type LandmarkName,
  type Landmarks,
  LEG_IDS,
  LEG_JOINTS,
  type LegId,
  legLandmark,
  type PlacedLandmark,
} from '../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';
import type { PhotoView } from '../../domain/photo/photo.ts';
import type { Patch } from './change.ts';
import type { BenchEntries } from './document.ts';

/** What a photo is asked for: a whole skin for its carapace and legs, an opened abdomen for single distances. */
export type Asks = 'skin' | 'abdomen';

export function askedOf(view: PhotoView): Asks {
  return view === 'abdomen-inside' || view === 'abdomen-outside' ? 'abdomen' : 'skin';
}

/** The points the guide asks for, in its order. */
export function askedPoints(asks: Asks): readonly LandmarkName[] {
  return asks === 'skin' ? DORSAL_SKIN_PROTOCOL : FREE_LANDMARKS;
}

/**
 * Where the guide stands. `current` is the point it asks for; null when it has asked for all. Skipped points are not asked
 * again in this round. Legs named in `regrown` get their new points as regenerated. None of this is stored or undone.
 */
export interface Guide {
  readonly asks: Asks;
  readonly current: LandmarkName | null;
  readonly skipped: ReadonlySet<LandmarkName>;
  readonly regrown: ReadonlySet<LegId>;
}

/** A group of points as the guide and the list show them. */
export type LandmarkGroup = 'carapace' | LegId | FreeDistance;

export function groupsOf(asks: Asks): readonly LandmarkGroup[] {
  return asks === 'skin' ? ['carapace', ...LEG_IDS] : FREE_DISTANCES;
}

/** Every group there is, whatever the photo is asked for. */
export function allGroups(): readonly LandmarkGroup[] {
  return [...groupsOf('skin'), ...groupsOf('abdomen')];
}

export function namesIn(group: LandmarkGroup): readonly LandmarkName[] {
  if (isDistance(group)) return freeLandmarks(group);
  return group === 'carapace' ? CARAPACE_LANDMARKS : LEG_JOINTS.map((joint) => legLandmark(group, joint));
}

export function isDistance(group: LandmarkGroup): group is FreeDistance {
  return FREE_DISTANCES.some((distance) => distance === group);
}

export function isLeg(group: LandmarkGroup): group is LegId {
  return LEG_IDS.some((leg) => leg === group);
}

export function groupOf(name: LandmarkName): LandmarkGroup {
  if (isFreeLandmark(name)) return FREE_DISTANCES.find((distance) => freeLandmarks(distance).some((end) => end === name)) ?? 'own';
  return LEG_IDS.find((leg) => name.startsWith(`leg-${leg}-`)) ?? 'carapace';
}

/** A skin without a carapace has nothing to measure it by; a leg, or the end of one, may have been lost. */
export function canBeMissing(name: LandmarkName): boolean {
  return groupOf(name) !== 'carapace';
}

/** Where the guide starts on a reading: at its first open point; legs that hold a regenerated point count as regrown. */
export function guideFor(landmarks: Landmarks, asks: Asks = 'skin'): Guide {
  const regrown = LEG_IDS.filter((leg) => namesIn(leg).some((name) => landmarks[name]?.state === 'regenerated'));
  return advance({ asks, current: null, skipped: new Set(), regrown: new Set(regrown) }, landmarks);
}

/** Goes on to the next open point after the current one; starts again at the front before it gives up. */
export function advance(guide: Guide, landmarks: Landmarks): Guide {
  const points = askedPoints(guide.asks);
  const from = guide.current === null ? 0 : points.indexOf(guide.current) + 1;
  const order = [...points.slice(from), ...points.slice(0, from)];
  const next = order.find((name) => landmarks[name] === undefined && !guide.skipped.has(name));
  return { ...guide, current: next ?? null };
}

export function chooseStep(guide: Guide, name: LandmarkName): Guide {
  const skipped = new Set(guide.skipped);
  skipped.delete(name);
  return { ...guide, current: name, skipped };
}

/** Leaves the current point open and goes on. */
export function skipStep(guide: Guide, landmarks: Landmarks): Guide {
  if (guide.current === null) return guide;
  return advance({ ...guide, skipped: new Set([...guide.skipped, guide.current]) }, landmarks);
}

/** Leaves every open point of the group alone and goes on after it. */
export function skipGroup(guide: Guide, group: LandmarkGroup, landmarks: Landmarks): Guide {
  const open = namesIn(group).filter((name) => landmarks[name] === undefined);
  return advance({ ...guide, skipped: new Set([...guide.skipped, ...open]) }, landmarks);
}

/** Has the guide asked again for what was skipped. */
export function askSkippedAgain(guide: Guide, landmarks: Landmarks): Guide {
  return advance({ ...guide, current: null, skipped: new Set() }, landmarks);
}

export function setRegrown(guide: Guide, leg: LegId, isRegrown: boolean): Guide {
  const regrown = new Set(guide.regrown);
  if (isRegrown) regrown.add(leg);
  else regrown.delete(leg);
  return { ...guide, regrown };
}

/** The landmark that a click for `name` makes; `known` is what else is known of it. */
export function landmarkAt(
  guide: Guide,
  name: LandmarkName,
  at: ImagePoint,
  known: Partial<Pick<PlacedLandmark, 'height' | 'pointingPx' | 'aimedPx' | 'called'>> = {},
): Landmark {
  const group = groupOf(name);
  const place = {
    at,
    ...(known.pointingPx === undefined ? {} : { pointingPx: known.pointingPx }),
    ...(known.aimedPx === undefined ? {} : { aimedPx: known.aimedPx }),
    ...(known.height === undefined ? {} : { height: known.height }),
    ...(known.called === undefined ? {} : { called: known.called }),
  };
  return isLeg(group) && guide.regrown.has(group) ? { state: 'regenerated', ...place } : { state: 'placed', ...place };
}

/** Marks points as not there or not to be seen; a point they had goes (undo brings it back). */
export function markAbsent(names: readonly LandmarkName[], state: 'missing' | 'not-visible'): Patch<BenchEntries> {
  return Object.fromEntries(names.map((name) => [name, { state }]));
}

/** Turns the placed points of a leg into regenerated ones, or back. */
export function markRegrown(landmarks: Landmarks, leg: LegId, isRegrown: boolean): Patch<BenchEntries> {
  return Object.fromEntries(
    namesIn(leg).flatMap((name) => {
      const landmark = landmarks[name];
      if (landmark === undefined || !('at' in landmark)) return [];
      return [[name, { ...landmark, state: isRegrown ? 'regenerated' : 'placed' }]];
    }),
  );
}

/** How far the reading is. Points marked missing or not visible are answered too. */
export function progressOf(landmarks: Landmarks, names: readonly LandmarkName[] = DORSAL_SKIN_PROTOCOL): { done: number; total: number } {
  return { done: names.filter((name) => landmarks[name] !== undefined).length, total: names.length };
}
