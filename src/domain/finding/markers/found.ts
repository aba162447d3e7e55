import type { ImagePoint } from '../../measuring/points.ts';

/** A marker of the dictionary seen in a picture, roughly: detectors shrink or shift its outline by up to a pixel. */
export interface FoundMarker {
  readonly markerId: number;
  /** Clockwise on the screen from the corner that is top left when the marker stands upright. */
  readonly corners: readonly [ImagePoint, ImagePoint, ImagePoint, ImagePoint];
}

/** What the detector saw in one picture. */
export interface SeenMarkers {
  readonly upright: readonly FoundMarker[];
  /** In the picture turned over left to right, in the frame of that: a few markers are their own mirror images. */
  readonly mirrored: readonly FoundMarker[];
}

/** Points of a printed pattern found in a picture, with their nominal places. */
export interface FoundPoints {
  /** Of this pattern alone: another card may lie in the picture. */
  readonly markers: number;
  readonly points: { readonly at: ImagePoint; readonly xMm: number; readonly yMm: number }[];
  /** Standard uncertainty of one point per coordinate, of finding it, not from the scatter about a plane. */
  readonly pointPx: number;
}
