import { z } from 'zod';

/** A point of the upright photo, in pixels: x right, y down, centre of the top-left pixel at (0.5, 0.5). Sub-pixel. */
export const ImagePoint = z.object({ xPx: z.number(), yPx: z.number() }).meta({ id: 'ImagePoint' });
export type ImagePoint = z.infer<typeof ImagePoint>;

/**
 * A point of the reference plane (the face of the scale object), in millimeters. On a rectangle the origin is its first
 * corner, x runs along the first side, y along the second; with two points the origin is straight below the camera and the
 * axes are those of the picture. Either way x to y turns clockwise as the camera sees it, like the picture's own axes.
 */
export interface PlanePoint {
  readonly xMm: number;
  readonly yMm: number;
}
