import { z } from 'zod';

/** A point of the upright photo, in pixels: x right, y down, centre of the top-left pixel at (0.5, 0.5). Sub-pixel. */
export const ImagePoint = z.object({ xPx: z.number(), yPx: z.number() }).meta({ id: 'ImagePoint' });
export type ImagePoint = z.infer<typeof ImagePoint>;

/** A point of the reference plane (the face of the scale object), in millimetres, right-handed seen from the camera's side turned over: x along the object's first side, y along its second. */
export interface PlanePoint {
  readonly xMm: number;
  readonly yMm: number;
}
