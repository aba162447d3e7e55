import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { addScaled, type Matrix3 } from '../numerics/matrix3.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { PointsScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { fitHomography, type HomographyFit } from './homography.ts';
import type { PlanePoint } from './points.ts';
import { focalExcursions, type PosedView, posedViewOf, type SeenPlane, sizeExcursions } from './posedView.ts';
import type { ViewExcursion } from './view.ts';

export interface PointsGeometry {
  readonly view: PosedView;
  /** Eight of the map, two of the print, one of the focal length if known. */
  readonly excursions: readonly ViewExcursion<PosedView>[];
  /** Root mean square distance of the points from the map, px, over its degrees of freedom; null for four points. */
  readonly scatterPx: number | null;
}

/** True places of the marked points, mm. */
export function truePlaces({ points, print }: Pick<PointsScale, 'points' | 'print'>): readonly PlanePoint[] {
  return points.map(({ xMm, yMm }) => ({ xMm: xMm * print.xFactor, yMm: yMm * print.yFactor }));
}

/** The view through the points of a printed pattern, and what it becomes when any one input moves by its standard uncertainty. */
export function viewOfPoints(marks: PointsScale, picture: PictureFacts): Result<PointsGeometry> {
  const places = truePlaces(marks);
  const fit = fitHomography(
    places,
    marks.points.map(({ at }) => at),
  );
  if (!fit) return fail({ code: 'points-on-a-line' });
  const [first] = marks.points;
  if (!first) return fail({ code: 'points-on-a-line' });
  if (isMirrored(fit.matrix, places[0] ?? { xMm: 0, yMm: 0 })) return fail({ code: 'corners-mirrored' });

  const plane: SeenPlane = { planeToImage: fit.matrix, lens: lensOf(picture), anchor: middleOf(places), visible: first.at };
  const moved = (response: Matrix3, by: number): PosedView => posedViewOf({ ...plane, planeToImage: addScaled(fit.matrix, response, by) });
  const scatterPx = fit.degreesOfFreedom > 0 ? Math.sqrt(fit.residualSumOfSquaresPx2 / fit.degreesOfFreedom) : null;
  const share = marks.print.relativeStandardUncertainty;
  const excursions: ViewExcursion<PosedView>[] = [
    ...principalResponses(fit, Math.max(marks.pointPx, scatterPx ?? 0)).map((response) => ({
      source: 'calibration' as const,
      below: moved(response, -1),
      above: moved(response, 1),
    })),
    ...sizeExcursions(plane, share, share),
    ...focalExcursions(plane, picture),
  ];
  return succeed({ view: posedViewOf(plane), excursions, scatterPx });
}

/**
 * The covariance of the map's entries as at most eight independent changes of it, each one standard uncertainty large: many
 * points move the map in no more ways than it has parameters. Entries are scaled alike before their axes are looked for.
 */
function principalResponses({ matrix, responses }: HomographyFit, pointPx: number): readonly Matrix3[] {
  const spread = matrix.map((_, entry) => Math.sqrt(responses.reduce((sum, response) => sum + (response[entry] ?? 0) ** 2, 0)) || 1);
  const scaled = new Matrix(responses.map((response) => response.map((value, entry) => value / (spread[entry] ?? 1))));
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(scaled.transpose().mmul(scaled), { assumeSymmetric: true });
  return realEigenvalues.flatMap((value, column) => {
    if (!(value > 1e-18)) return [];
    const length = pointPx * Math.sqrt(value);
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = eigenvectorMatrix
      .getColumn(column)
      .map((entry, index) => entry * (spread[index] ?? 1) * length);
    return [[a, b, c, d, e, f, g, h, i] satisfies Matrix3];
  });
}

function middleOf(places: readonly PlanePoint[]): PlanePoint {
  return {
    xMm: places.reduce((sum, { xMm }) => sum + xMm, 0) / places.length,
    yMm: places.reduce((sum, { yMm }) => sum + yMm, 0) / places.length,
  };
}

/** Whether a small turn from x to y in the plane is seen turning the other way: the sign of the map's local determinant. */
function isMirrored(h: Matrix3, { xMm, yMm }: PlanePoint): boolean {
  const determinant = h[0] * (h[4] * h[8] - h[5] * h[7]) - h[1] * (h[3] * h[8] - h[5] * h[6]) + h[2] * (h[3] * h[7] - h[4] * h[6]);
  const depth = h[6] * xMm + h[7] * yMm + h[8];
  return determinant / depth ** 3 < 0;
}
