import { freeLandmarks, type LandmarkName, type LegId, type PointHeight } from '../../../domain/measuring/landmarks.ts';
import type { CarapaceHeight } from '../../../domain/measuring/reading.ts';
import { landmarksOf } from '../document.ts';
import { handlePosition, isLandmarkName } from '../handles.ts';
import type { ChangeLabel } from '../history.ts';
import {
  type Asks,
  advance,
  askSkippedAgain,
  canBeMissing,
  chooseStep,
  guideFor,
  type LandmarkGroup,
  markAbsent,
  markRegrown,
  namesIn,
  setRegrown,
  skipGroup,
  skipStep,
} from '../steps.ts';
import { type BenchStore, placingLandmark } from '../store.ts';
import { changeDocument } from './changeDocument.ts';

export function setHeight(store: BenchStore, height: CarapaceHeight): void {
  changeDocument(store, 'set-height', { height });
}

/** What is known of the height of some placed points; null goes back to the default. */
export function setPointHeights(store: BenchStore, names: readonly LandmarkName[], height: PointHeight | null): void {
  const { document } = store.getState().edited;
  const changed = names.flatMap((name) => {
    const landmark = document[name];
    if (landmark === undefined || !('at' in landmark)) return [];
    const { height: _, ...rest } = landmark;
    return [[name, height === null ? rest : { ...rest, height }]];
  });
  changeDocument(store, 'set-point-height', Object.fromEntries(changed));
}

/** How well all heights that were typed for single points are known. */
export function setHeightUncertainty(store: BenchStore, standardUncertaintyMm: number): void {
  const { document } = store.getState().edited;
  const changed = Object.entries(landmarksOf(document)).flatMap(([name, landmark]) =>
    'at' in landmark && landmark.height !== undefined
      ? [[name, { ...landmark, height: { ...landmark.height, standardUncertaintyMm } }]]
      : [],
  );
  changeDocument(store, 'set-point-height', Object.fromEntries(changed));
}

/** What the keeper calls the distance of their own, once its first end is placed; an empty name takes it away. */
export function nameOwnDistance(store: BenchStore, name: string): void {
  const [from] = freeLandmarks('own');
  const landmark = store.getState().edited.document[from];
  if (landmark === undefined || !('at' in landmark)) return;
  const { called: _, ...rest } = landmark;
  const called = name.trim();
  changeDocument(store, 'name-distance', { [from]: called === '' ? rest : { ...rest, called } });
}

export function setPointing(store: BenchStore, pointingPx: number): void {
  changeDocument(store, 'set-pointing', { pointingPx });
}

export function markPoints(store: BenchStore, names: readonly LandmarkName[], as: 'missing' | 'not-visible', label: ChangeLabel): void {
  changeDocument(store, label, markAbsent(names, as));
  store.setState((state) => {
    const landmarks = landmarksOf(state.edited.document);
    const asked = state.guide.current;
    const gone = state.selected !== null && handlePosition(state.edited.document, state.selected) === null;
    return {
      selected: gone ? null : state.selected,
      guide: asked === null || names.includes(asked) ? advance(state.guide, landmarks) : state.guide,
    };
  });
}

export function markLeg(store: BenchStore, leg: LegId, as: 'missing' | 'not-visible'): void {
  markPoints(store, namesIn(leg), as, 'mark-leg');
}

/** A regenerated leg: its points keep their place, and points still to come are regenerated too. */
export function markLegRegrown(store: BenchStore, leg: LegId, isRegrown: boolean): void {
  const landmarks = landmarksOf(store.getState().edited.document);
  changeDocument(store, 'mark-leg', markRegrown(landmarks, leg, isRegrown));
  store.setState((state) => ({ guide: setRegrown(state.guide, leg, isRegrown) }));
}

/** Takes back what is known of some points; the guide asks for the first of them. */
export function clearPoints(store: BenchStore, names: readonly LandmarkName[]): void {
  changeDocument(store, 'remove-point', Object.fromEntries(names.map((name) => [name, undefined])));
  const [first] = names;
  store.setState((state) => ({
    selected: state.selected !== null && isLandmarkName(state.selected) && names.includes(state.selected) ? null : state.selected,
    guide: first === undefined ? state.guide : chooseStep(state.guide, first),
  }));
}

/** Chooses a point from the drawing or the list: one that lies on the photo is selected and shown, else it is asked for. */
export function choosePoint(store: BenchStore, name: LandmarkName): void {
  store.setState((state) => {
    const isPlaced = handlePosition(state.edited.document, name) !== null;
    return {
      task: 'landmarks',
      placing: null,
      selected: isPlaced ? name : null,
      guide: isPlaced ? state.guide : chooseStep(state.guide, name),
    };
  });
}

/** What the guide asks for from now on; points of the other kind keep their places. */
export function askFor(store: BenchStore, asks: Asks): void {
  store.setState((state) => ({ guide: guideFor(landmarksOf(state.edited.document), asks), chosenInstead: null, besidePicture: null }));
}

/** Skips the point the guide asks for. */
export function skipAsked(store: BenchStore): void {
  store.setState((state) => ({ guide: skipStep(state.guide, landmarksOf(state.edited.document)) }));
}

/** Skips what is open of a whole leg. */
export function skipAskedGroup(store: BenchStore, group: LandmarkGroup): void {
  store.setState((state) => ({ guide: skipGroup(state.guide, group, landmarksOf(state.edited.document)) }));
}

export function askAgain(store: BenchStore): void {
  store.setState((state) => ({ guide: askSkippedAgain(state.guide, landmarksOf(state.edited.document)) }));
}

export function markAsked(store: BenchStore, as: 'missing' | 'not-visible'): void {
  const name = placingLandmark(store.getState());
  if (name !== null && (as === 'not-visible' || canBeMissing(name))) markPoints(store, [name], as, 'mark-point');
}
