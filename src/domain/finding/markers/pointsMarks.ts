import type { PointsScale, PrintFactors } from '../../measuring/calibration.ts';
import type { FoundPoints } from './found.ts';

/** Office paper; common practice, no source. */
const PAPER_THICKNESS_MM = 0.1;

/** The marks of a card that was found, on paper lying flat unless the keeper says otherwise. */
export function pointsMarks(
  { points, pointPx }: FoundPoints,
  object: PointsScale['object'],
  print: PrintFactors,
  thicknessMm: number = PAPER_THICKNESS_MM,
): PointsScale {
  return { kind: 'points', object, points: [...points], pointPx, print, printCheck: null, mirrored: false, thicknessMm };
}
