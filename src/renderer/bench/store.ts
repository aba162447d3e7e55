import { createStore, type StoreApi } from 'zustand/vanilla';
import type { FoundScale } from '../../domain/finding/foundScale.ts';
import type { ScaleMarks } from '../../domain/measuring/calibration.ts';
import type { LandmarkName, Landmarks, PointHeight } from '../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';
import { type BenchDocument, type BenchEntries, landmarksOf } from './document.ts';
import { type Handle, type HandleId, landmarkHandlesOf, scaleHandlesOf } from './handles.ts';
import { type Edited, freshlyOpened } from './history.ts';
import { DEFAULT_LOUPE_ZOOM } from './loupe.ts';
import type { Refining } from './refiner.ts';
import type { EdgeFinder } from './snapping.ts';
import { type Asks, type Guide, guideFor } from './steps.ts';
import type { PlacingScale, ScaleRole } from './tools/placingScale.ts';
import { type Pointing, RESTING } from './tools/pointing.ts';
import { fitWhole, type Size, type View } from './view.ts';

/** Which of the three jobs is in hand; decides what a click on the photo means. */
export type BenchTask = 'scale' | 'landmarks' | 'lengths';

/** Everything about one open photo. Drawing reads it frame by frame, React by selectors. */
export interface BenchState {
  readonly picture: Size;
  readonly canvas: Size;
  readonly view: View;
  readonly edited: Edited<BenchEntries>;
  readonly task: BenchTask;
  readonly pointing: Pointing;
  readonly placing: PlacingScale | null;
  /** What becomes of it. */
  readonly placingAs: ScaleRole;
  /** What is being found in the picture, or why it was not. */
  readonly refining: Refining | null;
  /** What was found last and on what it rests; holds as long as the marks are still these. */
  readonly found: FoundScale | null;
  /** Marks of a proposal that is looked at and not taken over. */
  readonly preview: ScaleMarks | null;
  readonly guide: Guide;
  readonly selected: HandleId | null;
  /** The point that the last click selected though one was to be placed; the same click again places it. */
  readonly chosenInstead: LandmarkName | null;
  /** Where the last click was to place something and fell beside the picture. */
  readonly besidePicture: ImagePoint | null;
  /** Points of other passes, shown faintly; empty while they are hidden. */
  readonly ghosts: readonly Landmarks[];
  /** The keeper places no more points and wants to see the passes before this one. */
  readonly isPlacingEnded: boolean;
  /** Where the loupe looks: under the pointer while it is over the photo. */
  readonly hover: ImagePoint | null;
  /** CSS pixels in the loupe for one of the image. */
  readonly loupeZoom: number;
  /** Whether points go to the nearest strong edge. */
  readonly snaps: boolean;
  /** While the key is held that lets a point fall where it is clicked. */
  readonly snapIsHeldBack: boolean;
  /** Reads the open photo; null until its own pixels are there. */
  readonly findEdge: EdgeFinder | null;
  /** Heights stated in an earlier pass: they belong to the skin, and a point placed now takes its own from here. */
  readonly knownHeights: Partial<Record<LandmarkName, PointHeight>>;
}

/** What a new Bench takes over from the pass before. */
export type Habits = Partial<Pick<BenchState, 'task' | 'loupeZoom' | 'snaps' | 'knownHeights' | 'isPlacingEnded'>> & {
  readonly asks?: Asks;
};

export type BenchStore = StoreApi<BenchState>;

export function createBenchStore(picture: Size, document: BenchDocument, { asks = 'skin', ...habits }: Habits = {}): BenchStore {
  const canvas = { width: 1, height: 1 };
  const landmarks = landmarksOf(document);
  return createStore<BenchState>(() => ({
    picture,
    canvas,
    view: fitWhole(picture, canvas),
    edited: freshlyOpened(document),
    task: taskFor(document, asks),
    pointing: RESTING,
    placing: null,
    placingAs: 'scale',
    refining: null,
    found: null,
    preview: null,
    guide: guideFor(landmarks, asks),
    selected: null,
    chosenInstead: null,
    besidePicture: null,
    ghosts: [],
    isPlacingEnded: false,
    hover: null,
    loupeZoom: DEFAULT_LOUPE_ZOOM,
    snaps: false,
    snapIsHeldBack: false,
    findEdge: null,
    knownHeights: {},
    ...habits,
  }));
}

/** A photo without a scale is opened at the scale, one without points at the points, a measured one at its lengths. */
function taskFor(document: BenchDocument, asks: Asks): BenchTask {
  if (document.scale === undefined) return 'scale';
  return guideFor(landmarksOf(document), asks).current === null ? 'lengths' : 'landmarks';
}

/** The point a click would place now. */
export function placingLandmark(state: BenchState): LandmarkName | null {
  return state.task === 'landmarks' && state.placing === null ? state.guide.current : null;
}

/** Only the handles of the task in hand can be taken, so that a corner never moves while legs are being marked. */
export function handlesInHand(state: BenchState): readonly Handle[] {
  if (state.placing !== null) return [];
  return state.task === 'scale' ? scaleHandlesOf(state.edited.document.scale) : landmarkHandlesOf(state.edited.document);
}
