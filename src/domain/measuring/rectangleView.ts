import { addScaled, type Matrix3, scale } from '../numerics/matrix3.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { RectangleScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { checkCorners } from './corners.ts';
import { fittedSidesOf, sideErrors } from './fittedSides.ts';
import { fitHomography, type HomographyFit } from './homography.ts';
import type { PlanePoint } from './points.ts';
import { focalExcursions, type PosedView, posedViewOf, type SeenPlane, sizeExcursions } from './posedView.ts';
import type { ViewExcursion } from './view.ts';

export interface RectangleGeometry {
  readonly view: PosedView;
  /**
   * One for each coordinate of each corner, or, where these were constructed from all four sides, two for each side (`fittedSides.ts`); for both
   * lengths of the object, and for the focal length if known.
   */
  readonly excursions: readonly ViewExcursion<PosedView>[];
}

/** The plane's corners in the order of the marks: origin in the first, x along the first side, y along the second. */
export function rectangleOutline({ widthMm, heightMm }: Pick<RectangleScale, 'widthMm' | 'heightMm'>): readonly PlanePoint[] {
  return [
    { xMm: 0, yMm: 0 },
    { xMm: widthMm, yMm: 0 },
    { xMm: widthMm, yMm: heightMm },
    { xMm: 0, yMm: heightMm },
  ];
}

/** Independent changes of the plane's map, one standard uncertainty each. */
function changesOf({ responses }: HomographyFit, marks: RectangleScale): Matrix3[] {
  const sides = fittedSidesOf(marks);
  if (!sides) return responses.map((response) => scale(response, marks.pointingPx));
  return sideErrors(sides).map((shifts) =>
    shifts
      .flatMap(({ xPx, yPx }) => [xPx, yPx])
      .reduce((sum, byPx, index) => addScaled(sum, responses[index] ?? NO_CHANGE, byPx), NO_CHANGE),
  );
}

const NO_CHANGE: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0];

/** The view through four marked corners, and what it becomes when any one input moves by its standard uncertainty. */
export function viewOfRectangle(marks: RectangleScale, picture: PictureFacts): Result<RectangleGeometry> {
  const checked = checkCorners(marks.corners);
  if (!checked.ok) return checked;
  const fit = fitHomography(rectangleOutline(marks), marks.corners);
  if (!fit) return fail({ code: 'corners-collinear' });

  const { widthMm, heightMm } = marks;
  const plane: SeenPlane = {
    planeToImage: fit.matrix,
    lens: lensOf(picture),
    anchor: { xMm: widthMm / 2, yMm: heightMm / 2 },
    visible: marks.corners[0],
  };
  const moved = (change: Matrix3, sign: number): PosedView => posedViewOf({ ...plane, planeToImage: addScaled(fit.matrix, change, sign) });
  const excursions: ViewExcursion<PosedView>[] = [
    ...changesOf(fit, marks).map((change) => ({ source: 'calibration' as const, below: moved(change, -1), above: moved(change, 1) })),
    ...sizeExcursions(plane, marks.widthStandardUncertaintyMm / widthMm, marks.heightStandardUncertaintyMm / heightMm),
    ...focalExcursions(plane, picture),
  ];
  return succeed({ view: posedViewOf(plane), excursions });
}
