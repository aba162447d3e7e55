import type { ScaleMarks } from '../../domain/measuring/calibration.ts';
import { ALL_LANDMARKS, type Landmark, type LandmarkName, type Landmarks } from '../../domain/measuring/landmarks.ts';
import { type CarapaceHeight, DEFAULT_POINTING_PX, type Reading, type ReadingDraft } from '../../domain/measuring/reading.ts';
import type { Document } from './change.ts';
import type { ScaleHandleId } from './scaleIds.ts';

/**
 * Everything on the Bench that can be changed and undone, one entry per thing a hand can touch: the marks on the scale
 * object, each landmark, the height of the carapace and the pointing uncertainty (px). Lengths are never in here.
 */
export interface BenchEntries extends Record<LandmarkName, Landmark> {
  scale: ScaleMarks;
  /** Of a second object, to check the first by. */
  check: ScaleMarks;
  /** Marks of the scale object that were put down roughly and not touched since: until none is left they are no scale. */
  roughScale: readonly ScaleHandleId[];
  height: CarapaceHeight;
  pointingPx: number;
}

export type BenchDocument = Document<BenchEntries>;

/** Entries that belong to the reading; `scale` and `check` belong to the photo. */
export const READING_KEYS: readonly (keyof BenchEntries)[] = ['height', 'pointingPx', ...ALL_LANDMARKS];

export function documentOf(
  { marks, check }: { readonly marks: ScaleMarks | null; readonly check?: ScaleMarks | undefined },
  reading: Reading | null,
): BenchDocument {
  return {
    ...(marks === null ? {} : { scale: marks }),
    ...(check === undefined ? {} : { check }),
    ...(reading === null ? {} : { height: reading.carapaceHeight, pointingPx: reading.pointingPx, ...reading.landmarks }),
  };
}

/** The marks on the scale object once each of them was put where it belongs. */
export function placedScaleOf({ scale, roughScale }: BenchDocument): ScaleMarks | undefined {
  return roughScale === undefined ? scale : undefined;
}

export function landmarksOf(document: BenchDocument): Landmarks {
  const landmarks: Landmarks = {};
  for (const name of ALL_LANDMARKS) {
    const landmark = document[name];
    if (landmark !== undefined) landmarks[name] = landmark;
  }
  return landmarks;
}

/** The reading as it is stored. An entry that was never touched takes its default here, not in the document. */
export function readingDraftOf(document: BenchDocument, by: Pick<ReadingDraft, 'observer' | 'pass'>): ReadingDraft {
  return {
    protocol: 'dorsal-skin',
    observer: by.observer,
    pass: by.pass,
    carapaceHeight: document.height ?? { kind: 'assumed' },
    pointingPx: document.pointingPx ?? DEFAULT_POINTING_PX,
    landmarks: landmarksOf(document),
  };
}
