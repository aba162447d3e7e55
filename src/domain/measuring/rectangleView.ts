import { addScaled, type Matrix3 } from '../numerics/matrix3.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { RectangleScale } from './calibration.ts';
import { type CameraPose, focalStandardUncertaintyPx, type Lens, lensOf, type PictureFacts, poseOf } from './camera.ts';
import { checkCorners } from './corners.ts';
import { fitHomography } from './homography.ts';
import type { PlanePoint } from './points.ts';
import { invertHomography, stretchPlane, type View, type ViewExcursion } from './view.ts';

/** A view together with the pose behind it. */
export interface PosedView extends View {
  readonly pose: CameraPose;
}

export interface RectangleGeometry {
  readonly planeToImage: Matrix3;
  readonly view: PosedView;
  /** One for each coordinate of each corner, for each side of the object, and for the focal length if known. */
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

/** The view through four marked corners, and what it becomes when any one input moves by its standard uncertainty. */
export function viewOfRectangle(marks: RectangleScale, picture: PictureFacts): Result<RectangleGeometry> {
  const checked = checkCorners(marks.corners);
  if (!checked.ok) return checked;
  const fit = fitHomography(rectangleOutline(marks), marks.corners);
  if (!fit) return fail({ code: 'corners-collinear' });

  const lens = lensOf(picture);
  const { widthMm, heightMm } = marks;
  const anchor = { xMm: widthMm / 2, yMm: heightMm / 2 };
  const see = (planeToImage: Matrix3, through: Lens): PosedView => {
    const pose = poseOf(planeToImage, through, anchor);
    return { imageToPlane: invertHomography(planeToImage, marks.corners[0]), station: pose.station, pose };
  };
  // A plane whose sides are longer: the same picture, other millimeters.
  const resize = (xFactor: number, yFactor: number): PosedView => {
    const [a, b, c, d, e, f, g, h, i] = fit.matrix;
    const stretched: Matrix3 = [a / xFactor, b / yFactor, c, d / xFactor, e / yFactor, f, g / xFactor, h / yFactor, i];
    const pose = poseOf(stretched, lens, { xMm: anchor.xMm * xFactor, yMm: anchor.yMm * yFactor });
    return { imageToPlane: stretchPlane(view.imageToPlane, xFactor, yFactor), station: pose.station, pose };
  };

  const view = see(fit.matrix, lens);
  const excursions: ViewExcursion<PosedView>[] = fit.responses.map((response) => ({
    source: 'calibration',
    below: see(addScaled(fit.matrix, response, -marks.pointingPx), lens),
    above: see(addScaled(fit.matrix, response, marks.pointingPx), lens),
  }));
  const widthShare = marks.widthStandardUncertaintyMm / widthMm;
  const heightShare = marks.heightStandardUncertaintyMm / heightMm;
  if (widthShare > 0) excursions.push({ source: 'scale-object', below: resize(1 - widthShare, 1), above: resize(1 + widthShare, 1) });
  if (heightShare > 0) excursions.push({ source: 'scale-object', below: resize(1, 1 - heightShare), above: resize(1, 1 + heightShare) });
  const focalUncertaintyPx = focalStandardUncertaintyPx(lens, picture);
  if (focalUncertaintyPx > 0) {
    const refocus = (byPx: number): PosedView => see(fit.matrix, { ...lens, focalPx: lens.focalPx + byPx });
    excursions.push({ source: 'camera-distance', below: refocus(-focalUncertaintyPx), above: refocus(focalUncertaintyPx) });
  }
  return succeed({ planeToImage: fit.matrix, view, excursions });
}
