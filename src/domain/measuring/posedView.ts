import type { Matrix3 } from '../numerics/matrix3.ts';
import { type CameraPose, focalStandardUncertaintyPx, type Lens, type PictureFacts, poseOf } from './camera.ts';
import type { ImagePoint, PlanePoint } from './points.ts';
import { invertHomography, stretchPlane, type View, type ViewExcursion } from './view.ts';

/** A view together with the pose behind it. */
export interface PosedView extends View {
  readonly pose: CameraPose;
}

/** A plane as a lens shows it. */
export interface SeenPlane {
  readonly planeToImage: Matrix3;
  readonly lens: Lens;
  /** The point of the plane that the pose is told for. */
  readonly anchor: PlanePoint;
  /** Any pixel that shows a point of the plane. */
  readonly visible: ImagePoint;
}

export function posedViewOf({ planeToImage, lens, anchor, visible }: SeenPlane): PosedView {
  const pose = poseOf(planeToImage, lens, anchor);
  return { imageToPlane: invertHomography(planeToImage, visible), station: pose.station, pose };
}

/** What the view becomes when the object is longer or shorter by its standard uncertainties, as shares of its sides. */
export function sizeExcursions(plane: SeenPlane, xShare: number, yShare: number): ViewExcursion<PosedView>[] {
  const excursions: ViewExcursion<PosedView>[] = [];
  if (xShare > 0)
    excursions.push({ source: 'scale-object', below: stretched(plane, 1 - xShare, 1), above: stretched(plane, 1 + xShare, 1) });
  if (yShare > 0)
    excursions.push({ source: 'scale-object', below: stretched(plane, 1, 1 - yShare), above: stretched(plane, 1, 1 + yShare) });
  return excursions;
}

/** What it becomes when the focal length moves by its standard uncertainty; nothing where that is not known. */
export function focalExcursions(plane: SeenPlane, picture: PictureFacts): ViewExcursion<PosedView>[] {
  const { lens } = plane;
  const uncertaintyPx = focalStandardUncertaintyPx(lens, picture);
  if (!(uncertaintyPx > 0)) return [];
  const refocused = (byPx: number): PosedView => posedViewOf({ ...plane, lens: { ...lens, focalPx: lens.focalPx + byPx } });
  return [{ source: 'camera-distance', below: refocused(-uncertaintyPx), above: refocused(uncertaintyPx) }];
}

/** A plane whose sides are longer: the same picture, other millimeters. */
function stretched({ planeToImage, lens, anchor, visible }: SeenPlane, xFactor: number, yFactor: number): PosedView {
  const [a, b, c, d, e, f, g, h, i] = planeToImage;
  const map: Matrix3 = [a / xFactor, b / yFactor, c, d / xFactor, e / yFactor, f, g / xFactor, h / yFactor, i];
  const pose = poseOf(map, lens, { xMm: anchor.xMm * xFactor, yMm: anchor.yMm * yFactor });
  return { imageToPlane: stretchPlane(invertHomography(planeToImage, visible), xFactor, yFactor), station: pose.station, pose };
}
