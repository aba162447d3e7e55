import type { BenchSheet } from '../../../api/contract/bench.ts';
import { type LandmarkName, type PointHeight, statedHeights } from '../../../domain/measuring/landmarks.ts';
import type { CarapaceHeight, Reading } from '../../../domain/measuring/reading.ts';
import type { Stored } from '../../bench/saving.ts';

/** One pass over one photo: by whom, which, and what is stored of it so far. */
export interface Pass {
  readonly observer: string;
  readonly pass: number;
  readonly reading: Reading | null;
  /** Entered in an earlier pass: the height belongs to the skin, and a new pass begins with it. Null when none was entered. */
  readonly inheritedHeight: CarapaceHeight | null;
  /** The same for single points. */
  readonly inheritedPointHeights: Partial<Record<LandmarkName, PointHeight>>;
}

export function passOf(reading: Reading): Pass {
  return { observer: reading.observer, pass: reading.pass, reading, inheritedHeight: null, inheritedPointHeights: {} };
}

/**
 * Whether a stored reading is the pass in hand: by its id once it has one, for another window may have begun a pass of the same
 * number; until then by what it was begun with.
 */
export function isInHand(
  { id, pass, observer }: Pick<Reading, 'id' | 'pass' | 'observer'>,
  inHand: Omit<Pass, 'inheritedHeight' | 'inheritedPointHeights'>,
): boolean {
  return inHand.reading === null ? pass === inHand.pass && observer === inHand.observer.trim() : id === inHand.reading.id;
}

/** The pass that was made last, or a first one. */
export function latestPass(sheet: BenchSheet, observer: string): Pass {
  const latest = sheet.readings.toSorted((one, other) => one.pass - other.pass).at(-1);
  return latest === undefined ? newPass(sheet, observer) : passOf(latest);
}

export function newPass({ readings }: Pick<BenchSheet, 'readings'>, observer: string): Pass {
  const earlier = readings.toSorted((one, other) => one.pass - other.pass);
  const entered = earlier.map(({ carapaceHeight }) => carapaceHeight).findLast(({ kind }) => kind === 'entered');
  return {
    observer: observer.trim(),
    pass: (earlier.at(-1)?.pass ?? 0) + 1,
    reading: null,
    inheritedHeight: entered ?? null,
    inheritedPointHeights: Object.assign({}, ...earlier.map(({ landmarks }) => statedHeights(landmarks))),
  };
}

export function storedReading({
  protocol,
  observer,
  pass,
  carapaceHeight,
  pointingPx,
  landmarks,
  earlierSeen,
  id,
  version,
}: Reading): NonNullable<Stored['reading']> {
  const draft = { protocol, observer, pass, carapaceHeight, pointingPx, landmarks };
  return { id, version, draft: earlierSeen === undefined ? draft : { ...draft, earlierSeen } };
}
