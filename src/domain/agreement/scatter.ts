import { z } from 'zod';
import { type LandmarkName, pointOf } from '../measuring/landmarks.ts';
import type { ImagePoint } from '../measuring/points.ts';
import type { ReadingDraft } from '../measuring/reading.ts';

/** Squares of the distances of repeated clicks from their mean, px2 of the photo, both coordinates together. */
export const Scatter = z
  .object({
    sumOfSquares: z.number().min(0),
    degreesOfFreedom: z.int().min(0),
    photos: z.int().min(0).describe('How many photos the repeats are on'),
  })
  .meta({ id: 'Scatter' });
export type Scatter = z.infer<typeof Scatter>;

/** One pass over one photo. */
export type Pass = Pick<ReadingDraft, 'observer' | 'landmarks'> & { readonly photoId: string };

/** Of one landmark in passes over one photo by one observer. */
export function scatterOf(name: LandmarkName, passes: readonly Pass[]): Scatter {
  const points = passes.flatMap((pass) => placedByHand(name, pass) ?? []);
  if (points.length < 2) return { sumOfSquares: 0, degreesOfFreedom: 0, photos: 0 };
  const meanX = points.reduce((sum, { xPx }) => sum + xPx, 0) / points.length;
  const meanY = points.reduce((sum, { yPx }) => sum + yPx, 0) / points.length;
  return {
    sumOfSquares: points.reduce((sum, { xPx, yPx }) => sum + (xPx - meanX) ** 2 + (yPx - meanY) ** 2, 0),
    degreesOfFreedom: 2 * (points.length - 1),
    photos: 1,
  };
}

/** Null where the landmark was not placed, or was found on an edge, which says nothing about the hand. */
export function placedByHand(name: LandmarkName, { landmarks }: Pick<Pass, 'landmarks'>): ImagePoint | null {
  const landmark = landmarks[name];
  return landmark !== undefined && 'at' in landmark && landmark.pointingPx === undefined ? pointOf(landmark) : null;
}

export function totalOf(scatters: readonly Scatter[]): Scatter {
  return {
    sumOfSquares: scatters.reduce((sum, scatter) => sum + scatter.sumOfSquares, 0),
    degreesOfFreedom: scatters.reduce((sum, scatter) => sum + scatter.degreesOfFreedom, 0),
    photos: scatters.reduce((sum, scatter) => sum + scatter.photos, 0),
  };
}

/** Standard deviation of one coordinate, px. */
export function spreadOf({ sumOfSquares, degreesOfFreedom }: Scatter): number {
  return Math.sqrt(sumOfSquares / degreesOfFreedom);
}
