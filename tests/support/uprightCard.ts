import type { RectangleScale } from '../../src/domain/measuring/calibration.ts';

/** Marks of an ID-1 card (ISO/IEC 7810) that lies square in the picture at 10 px a millimeter, its top-left corner where asked. */
export function uprightCard(xPx: number, yPx: number, change: Partial<RectangleScale> = {}): RectangleScale {
  return {
    kind: 'rectangle',
    object: 'id-1',
    corners: [
      { xPx, yPx },
      { xPx: xPx + 856, yPx },
      { xPx: xPx + 856, yPx: yPx + 540 },
      { xPx, yPx: yPx + 540 },
    ],
    widthMm: 85.6,
    heightMm: 53.98,
    widthStandardUncertaintyMm: 0.075,
    heightStandardUncertaintyMm: 0.035,
    thicknessMm: 0.76,
    pointingPx: 1,
    ...change,
  };
}
