import type { RectangleObject } from './calibration.ts';

/** What is known of a rectangle that is sold or cut to a standard. */
export interface KnownRectangle {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly widthStandardUncertaintyMm: number;
  readonly heightStandardUncertaintyMm: number;
  readonly thicknessMm: number;
  /** Of its rounded corners: the constructed corner lies outside the arc. */
  readonly cornerRadiusMm: number;
}

export type KnownObject = Exclude<RectangleObject, 'own'>;

/** The face of a card ends in a burr of up to 0.08 mm (ISO/IEC 7810) that is lit otherwise; rectangular over +-0.06 mm, own assumption. */
export const EDGE_UNCERTAINTY_MM = 0.035;

/** Standard uncertainty of a size that may be anywhere within +- `halfWidth` (rectangular distribution, JCGM 100:2008, 4.3.7). */
export function rectangularStandardUncertainty(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/**
 * ID-1: ISO/IEC 7810:2019, 85.60 mm x 53.98 mm, radius 3.18 mm, thickness 0.76 mm; limits of new cards +-0.13 mm and +-0.06 mm.
 * A sheets: ISO 216:2007, tolerance +-1.5 mm up to 150 mm and +-2 mm up to 600 mm (tolerances from memory). Thickness of
 * office paper, 0.1 mm: common practice, no source.
 */
export const KNOWN_RECTANGLES: { readonly [Name in KnownObject]: KnownRectangle } = {
  'id-1': {
    widthMm: 85.6,
    heightMm: 53.98,
    widthStandardUncertaintyMm: rectangularStandardUncertainty(0.13),
    heightStandardUncertaintyMm: rectangularStandardUncertainty(0.06),
    thicknessMm: 0.76,
    cornerRadiusMm: 3.18,
  },
  a6: sheet(148, 105),
  a5: sheet(210, 148),
  a4: sheet(297, 210),
};

function sheet(widthMm: number, heightMm: number): KnownRectangle {
  const tolerance = (sideMm: number): number => (sideMm <= 150 ? 1.5 : 2);
  return {
    widthMm,
    heightMm,
    widthStandardUncertaintyMm: rectangularStandardUncertainty(tolerance(widthMm)),
    heightStandardUncertaintyMm: rectangularStandardUncertainty(tolerance(heightMm)),
    thicknessMm: 0.1,
    cornerRadiusMm: 0,
  };
}
