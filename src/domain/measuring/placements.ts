import type { Excursion } from '../numerics/propagation.ts';
import type { Calibration } from './calibrate.ts';
import type { Heights } from './heights.ts';
import type { LandmarkName, Landmarks } from './landmarks.ts';
import { isFarFromScale } from './onPlane.ts';
import { type GivenPointing, type PointingError, pointingOf } from './pointingError.ts';
import type { ImagePoint } from './points.ts';
import { type SpacePoint, spacePointOf, type View } from './view.ts';

/** One placed landmark: its point in space, and where it moves when an input moves by its standard uncertainty. */
export interface Placement {
  /** Best estimate; on the object's plane when no height correction can be made. */
  readonly point: SpacePoint;
  /** With the height taken into account, through an assumed camera if need be. Same as `point` when corrected. */
  readonly raised: SpacePoint;
  /** As if it lay on the object's plane. */
  readonly onPlane: SpacePoint;
  /** One for each excursion of the calibration, in its order. */
  readonly byView: readonly Excursion<SpacePoint>[];
  readonly pointing: PointingError;
  /** Of the click itself, one per coordinate. */
  readonly byPointing: readonly Excursion<SpacePoint>[];
  /** Of this landmark's own height, from `raised`; null when it is known. */
  readonly byOwnHeight: Excursion<SpacePoint> | null;
  /** Of the height it shares with its fellows, from `raised`; stays in place for a landmark that shares none. */
  readonly bySharedHeight: Excursion<SpacePoint>;
  readonly regenerated: boolean;
  readonly heightAssumed: boolean;
  readonly farFromScale: boolean;
}

/**
 * Places all landmarks that carry a point, once for all quantities.
 *
 * @returns no entry for a landmark that was not placed; null for one whose pixel has no point on the plane.
 */
export function placeLandmarks(
  landmarks: Landmarks,
  calibration: Calibration,
  heights: Heights,
  pointing: GivenPointing,
): ReadonlyMap<LandmarkName, Placement | null> {
  const placements = new Map<LandmarkName, Placement | null>();
  for (const [name, landmark] of Object.entries(landmarks) as [LandmarkName, Landmarks[LandmarkName]][]) {
    if (landmark?.state !== 'placed' && landmark?.state !== 'regenerated') continue;
    const error = pointingOf(name, landmark, pointing);
    placements.set(name, place(name, landmark.at, landmark.state === 'regenerated', calibration, heights, error));
  }
  return placements;
}

function place(
  name: LandmarkName,
  at: ImagePoint,
  regenerated: boolean,
  calibration: Calibration,
  heights: Heights,
  pointing: PointingError,
): Placement | null {
  const { view, faceHeightMm } = calibration;
  const { pointingPx } = pointing;
  const height = heights.of(name);
  const aboveFaceMm = height.heightMm - faceHeightMm;
  const onPlane = spacePointOf(view, at, 0);
  const raised = spacePointOf(view, at, aboveFaceMm);
  if (!onPlane || !raised) return null;
  const corrected = calibration.station !== null;
  const zMm = corrected ? aboveFaceMm : 0;
  const point = corrected ? raised : onPlane;

  // An excursion beyond the horizon says nothing about the neighborhood of the estimate; that side then stays in place.
  const seen = (through: View, from: ImagePoint): SpacePoint => spacePointOf(through, from, zMm) ?? point;
  const lifted = (byMm: number): SpacePoint => spacePointOf(view, at, aboveFaceMm + byMm) ?? raised;
  const shared = height.sharedStandardUncertaintyMm;
  const own = height.ownStandardUncertaintyMm;
  return {
    point,
    raised,
    onPlane,
    byView: calibration.excursions.map(({ below, above }) => ({ below: seen(below, at), above: seen(above, at) })),
    pointing,
    byPointing: [
      { below: seen(view, { xPx: at.xPx - pointingPx, yPx: at.yPx }), above: seen(view, { xPx: at.xPx + pointingPx, yPx: at.yPx }) },
      { below: seen(view, { xPx: at.xPx, yPx: at.yPx - pointingPx }), above: seen(view, { xPx: at.xPx, yPx: at.yPx + pointingPx }) },
    ],
    byOwnHeight: own > 0 ? { below: lifted(-own), above: lifted(own) } : null,
    bySharedHeight: shared > 0 ? { below: lifted(-shared), above: lifted(shared) } : { below: raised, above: raised },
    regenerated,
    heightAssumed: height.assumed,
    farFromScale: isFarFromScale(calibration, onPlane),
  };
}
