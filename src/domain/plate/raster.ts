import type { PhotoMap } from '../measuring/photoMap.ts';
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
  /** Where its pixels lie in the photo. */
  readonly toPhoto: PhotoMap;
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
  const toPinhole = multiply(toPhotoFromMm, [1 / pxPerMm, 0, 0, 0, 1 / pxPerMm, 0, 0, 0, 1]);
  const factor = transform(toPinhole, middle.x * pxPerMm, middle.y * pxPerMm, 1)[2];
  return {
    widthPx: Math.max(1, Math.round(plate.widthMm * pxPerMm)),
    heightPx: Math.max(1, Math.round(plate.heightMm * pxPerMm)),
    pxPerMm,
    photoPerPx: nativePxPerMm / pxPerMm,
    toPhoto: { toPinhole: scale(toPinhole, 1 / factor), radialShift: plate.radialShift },
  };
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
