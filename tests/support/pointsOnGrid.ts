import type { PointsScale } from '../../src/domain/measuring/calibration.ts';
import { fitHomography } from '../../src/domain/measuring/homography.ts';
import { transform } from '../../src/domain/numerics/matrix3.ts';
import { markerCornersOf, type PhotoTruth } from './photoTruth.ts';

const SIDE_MM = 17.6;
const PITCH_MM = 54.4;
const COLUMNS = 5;

/** A grid of 25 points on the plane of the photo's marker card, each where the camera sees it. */
export function pointsOnGrid(photo: PhotoTruth, pointPx = 0.2): PointsScale {
  const places = [
    [11, 0, 0],
    [8, PITCH_MM, 0],
    [9, PITCH_MM, PITCH_MM],
    [2, 0, PITCH_MM],
  ] as const;
  const plane = places.flatMap(([, x, y]) => [
    { xMm: x, yMm: y },
    { xMm: x + SIDE_MM, yMm: y },
    { xMm: x + SIDE_MM, yMm: y + SIDE_MM },
    { xMm: x, yMm: y + SIDE_MM },
  ]);
  const fit = fitHomography(
    plane,
    places.flatMap(([markerId]) => markerCornersOf(photo, markerId)),
  );
  if (!fit) throw new Error('The card has no plane');
  return {
    kind: 'points',
    object: 'scale-card',
    points: Array.from({ length: COLUMNS * COLUMNS }, (_, index) => {
      const xMm = 18 * (index % COLUMNS);
      const yMm = 18 * Math.floor(index / COLUMNS);
      const [x, y, w] = transform(fit.matrix, xMm, yMm, 1);
      return { at: { xPx: x / w, yPx: y / w }, xMm, yMm };
    }),
    pointPx,
    print: { xFactor: 1, yFactor: 1, relativeStandardUncertainty: 0.001 },
    printCheck: null,
    mirrored: false,
    thicknessMm: 0.25,
  };
}
