import { type Result, succeed } from '../result.ts';
import type { PointsScale } from './calibration.ts';
import { lensOf, type PictureFacts } from './camera.ts';
import { commonWarnings, shapeWarnings, tiltWarnings } from './commonWarnings.ts';
import type { PinholeCalibration } from './pinholeCalibration.ts';
import { truePlaces, viewOfPoints } from './pointsView.ts';
import { rigidResidualPx } from './rigidResidual.ts';
import { localScaleMmPerPx } from './view.ts';

/**
 * Points are found to a few hundredths of a pixel, in a poor picture to a quarter: twice that comes from the card or the lens. Own
 * judgment. No multiple of the stated uncertainty, which older marks have from this very scatter.
 */
const LARGEST_SCATTER_PX = 0.5;

/** What the points of a printed pattern tell about a picture. */
export function calibrateOnPoints(marks: PointsScale, picture: PictureFacts): Result<PinholeCalibration> {
  const geometry = viewOfPoints(marks, picture);
  if (!geometry.ok) return geometry;
  const { view, excursions, scatterPx } = geometry.value;
  const lens = lensOf(picture);
  const places = truePlaces(marks);
  const xs = places.map(({ xMm }) => xMm);
  const ys = places.map(({ yMm }) => yMm);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const pixels = marks.points.map(({ at }) => at);
  const warnings = commonWarnings(picture, longestSpanPx(pixels), marks.print.relativeStandardUncertainty, lens.known);
  if (marks.mirrored) warnings.unshift({ code: 'picture-mirrored' });
  if (lens.known) warnings.push(...tiltWarnings(view.pose.tiltDeg), ...shapeWarnings('points', geometry.value));
  if (scatterPx !== null && scatterPx > LARGEST_SCATTER_PX) warnings.push({ code: 'points-scatter', scatterPx });
  return succeed({
    kind: 'points',
    view,
    excursions,
    mmPerPxAtCenter: localScaleMmPerPx(view.imageToPlane, lens.centre),
    tiltDeg: lens.known ? view.pose.tiltDeg : null,
    residualPx: lens.known ? rigidResidualPx(view.pose.frame, lens, places, pixels) : null,
    station: lens.known ? view.station : null,
    faceHeightMm: marks.thicknessMm,
    outline: [
      { xMm: left, yMm: top },
      { xMm: right, yMm: top },
      { xMm: right, yMm: bottom },
      { xMm: left, yMm: bottom },
    ],
    reachMm: Math.max(right - left, bottom - top),
    warnings,
  });
}

function longestSpanPx(pixels: readonly { readonly xPx: number; readonly yPx: number }[]): number {
  const xs = pixels.map(({ xPx }) => xPx);
  const ys = pixels.map(({ yPx }) => yPx);
  return Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}
