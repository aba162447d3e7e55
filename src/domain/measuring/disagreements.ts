import { calibrate } from './calibrate.ts';
import type { ScaleMarks } from './calibration.ts';
import type { PictureFacts } from './camera.ts';
import { type Comparison, contradictionOf, type ScaledObject } from './contradiction.ts';
import { areOfOneCard, areOfOneObject } from './sameObject.ts';

/** Two marks of one picture that contradict each other. */
export interface Disagreement {
  readonly one: ScaleMarks;
  readonly other: ScaleMarks;
  readonly contradiction: Comparison;
  /** Both are marks of one card: then its handles lie wrong. */
  readonly areOfOneCard: boolean;
}

/** Whether the second object that is kept with a scale contradicts it. */
export function isContradicted(marks: ScaleMarks, check: ScaleMarks | undefined, picture: PictureFacts): boolean {
  if (check === undefined) return false;
  const [first, second] = [calibrate(marks, picture), calibrate(check, picture)];
  if (!first.ok || !second.ok) return false;
  return disagreementsAmong({ marks, calibration: first.value }, [{ marks: check, calibration: second.value }]).length > 0;
}

/**
 * Every pair of objects that contradict each other, those with the present scale first. A printed card itself, found again with
 * another print check, contradicts nothing; nor does the present object, seen again, say a second time what contradicts it.
 */
export function disagreementsAmong(present: ScaledObject | null, others: readonly ScaledObject[]): readonly Disagreement[] {
  const besides = present === null ? others : others.filter(({ marks }) => !areOfOneObject(present.marks, marks));
  return [
    ...(present === null ? [] : others.flatMap((other) => disagreementOf(present, other))),
    ...besides.flatMap((one, index) => besides.slice(index + 1).flatMap((other) => disagreementOf(one, other))),
  ];
}

function disagreementOf(one: ScaledObject, other: ScaledObject): readonly Disagreement[] {
  const isOneCard = areOfOneCard(one.marks, other.marks);
  if (isOneCard && one.marks.kind === 'points') return [];
  const contradiction = contradictionOf(one, other);
  return contradiction === null ? [] : [{ one: one.marks, other: other.marks, contradiction, areOfOneCard: isOneCard }];
}
