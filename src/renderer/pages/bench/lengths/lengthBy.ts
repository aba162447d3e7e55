import { useMemo } from 'react';
import { calibrate } from '../../../../domain/measuring/calibrate.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import type { Disagreement } from '../../../../domain/measuring/disagreements.ts';
import { nameOfOwnDistance } from '../../../../domain/measuring/landmarks.ts';
import { measure } from '../../../../domain/measuring/measure.ts';
import type { Estimate } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { estimateInWords, unusableInWords } from '../../../../words/estimates.ts';
import { quantityName } from '../../../../words/quantities.ts';
import { type BenchDocument, landmarksOf, readingDraftOf } from '../../../bench/document.ts';
import { contradictionInWords, namesApart } from '../scale/findingWords.ts';
import { type Measured, useWork } from '../useWork.ts';

/** One length of a pass by whichever object is taken for the scale. */
export interface LengthBy {
  readonly name: string;
  /** Null where the object gives no such length. */
  readonly of: (marks: ScaleMarks) => Estimate | null;
}

/** The first length of the table; null while there is none. */
export function useLengthBy(document: BenchDocument, { measurement, pointingOf }: Measured): LengthBy | null {
  const { sheet, pass } = useWork();
  return useMemo(() => {
    const first = measurement?.quantities.find(({ unit }) => unit === 'mm');
    if (first === undefined) return null;
    const of = (marks: ScaleMarks): Estimate | null => {
      const calibration = calibrate(marks, sheet.photo);
      if (!calibration.ok) return null;
      const { quantities } = measure(readingDraftOf(document, pass), calibration.value, {
        pointing: pointingOf,
        shown: shownOn(sheet.photo),
      });
      return quantities.find(({ name }) => name === first.name)?.estimate ?? null;
    };
    return { name: quantityName(first.name, nameOfOwnDistance(landmarksOf(document))), of };
  }, [document, measurement, pointingOf, sheet, pass]);
}

/** "21.30 ± 0.12 mm". */
export function lengthInWords(estimate: Estimate): string {
  if (!isUsable(estimate)) return unusableInWords('mm');
  const { value, expandedUncertainty } = estimateInWords(estimate, 'mm');
  return `${value} ± ${expandedUncertainty} mm`;
}

/** For a copied reading: that its scale is contradicted, with what each of both gives. */
export function cautionsOf(disagreements: readonly Disagreement[], lengthBy: LengthBy | null): readonly string[] {
  return disagreements.map(({ one, other, contradiction, areOfOneCard }) => {
    const caution = areOfOneCard
      ? 'CAUTION: the handles do not lie on the edges of the card.'
      : `CAUTION: two objects in this picture contradict each other. ${contradictionInWords(one, other, contradiction)}`;
    const names = areOfOneCard ? ['the handles', 'the edges'] : namesApart(one, other).map((name) => `“${name}”`);
    const lengths = [one, other].flatMap((marks, index) => {
      const length = lengthBy?.of(marks) ?? null;
      return length === null ? [] : [`by ${names[index]} ${lengthInWords(length)}`];
    });
    const told = lengthBy === null || lengths.length < 2 ? '' : ` ${lengthBy.name}: ${lengths.join(', ')}.`;
    return `${caution}${told}`;
  });
}
