import type { ImagePoint } from '../measuring/points.ts';
import { adjugate, type Matrix3, multiply, scale, transform } from '../numerics/matrix3.ts';
import type { Plate } from './plate.ts';

/** The pixels of a plate, and where each of them lies in the photo. */
export interface PlateRaster {
  readonly widthPx: number;
  readonly heightPx: number;
  /** The same along both sides. */
  readonly pxPerMm: number;
  /** Pixels of the photo for each pixel of the raster, near the carapace; 1 or more. */
  readonly photoPerPx: number;
  /** Takes (x, y, 1) of the raster, the center of its top left pixel at (0.5, 0.5), to the photo; positive factor on the plate. */
  readonly toPhoto: Matrix3;
}

/**
 * A raster as fine as the photo itself, but with no side above a longest one.
 *
 * @param longestPx of its sides.
 */
export function rasterOf(plate: Plate, longestPx: number): PlateRaster {
  const toPhotoFromMm = adjugate(plate.toPlateMm);
  const middle = { x: plate.carapaceFromLeftMm, y: plate.carapaceAtMm };
  const nativePxPerMm = localPxPerMm(toPhotoFromMm, middle);
  const pxPerMm = Math.min(nativePxPerMm, longestPx / Math.max(plate.widthMm, plate.heightMm));
  const toPhoto = multiply(toPhotoFromMm, [1 / pxPerMm, 0, 0, 0, 1 / pxPerMm, 0, 0, 0, 1]);
  const factor = transform(toPhoto, middle.x * pxPerMm, middle.y * pxPerMm, 1)[2];
  return {
    widthPx: Math.max(1, Math.round(plate.widthMm * pxPerMm)),
    heightPx: Math.max(1, Math.round(plate.heightMm * pxPerMm)),
    pxPerMm,
    photoPerPx: nativePxPerMm / pxPerMm,
    toPhoto: scale(toPhoto, 1 / factor),
  };
}

/** Where a place of the raster lies in the photo; null beyond the horizon. */
export function photoPointOf(toPhoto: Matrix3, xPx: number, yPx: number): ImagePoint | null {
  const [x, y, factor] = transform(toPhoto, xPx, yPx, 1);
  return factor > 0 ? { xPx: x / factor, yPx: y / factor } : null;
}

/** Square root of the local ratio of areas, photo over plane. */
function localPxPerMm(m: Matrix3, at: { x: number; y: number }): number {
  const [x, y, factor] = transform(m, at.x, at.y, 1);
  const dxByX = (m[0] - (x / factor) * m[6]) / factor;
  const dxByY = (m[1] - (x / factor) * m[7]) / factor;
  const dyByX = (m[3] - (y / factor) * m[6]) / factor;
  const dyByY = (m[4] - (y / factor) * m[7]) / factor;
  return Math.sqrt(Math.abs(dxByX * dyByY - dxByY * dyByX));
}
