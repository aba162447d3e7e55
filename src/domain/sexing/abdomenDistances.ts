import { z } from 'zod';
import { combineReadings } from '../growth/combine.ts';
import { measuredLength } from '../growth/measuredLength.ts';
import { estimateOf } from '../growth/skinSizes.ts';
import { FREE_DISTANCES, type Landmarks, nameOfOwnDistance } from '../measuring/landmarks.ts';
import { Estimate, type Measurement } from '../measuring/quantity.ts';

/** One distance on the opened abdomen of a skin, mm, from all passes over all photos of it. */
export const AbdomenDistance = z
  .object({
    distance: z.enum(FREE_DISTANCES),
    called: z.string().nullable().describe('What the keeper calls the distance of their own; null for the others and without a name'),
    estimate: Estimate,
    photoIds: z.array(z.string()).describe('Photos it was measured on'),
  })
  .meta({ id: 'AbdomenDistance' });
export type AbdomenDistance = z.infer<typeof AbdomenDistance>;

/** One pass over one photo of a skin, as measured under that photo's calibration. */
export interface AbdomenReading {
  readonly photoId: string;
  readonly landmarks: Landmarks;
  readonly measurement: Measurement;
}

/**
 * The distances of one skin in the order of the guide; those of the keeper's own by their names. Distances measured more than once
 * are combined as sizes are. They describe what was seen and never weigh: no source gives limits for either sex.
 */
export function abdomenDistancesOf(readings: readonly AbdomenReading[]): AbdomenDistance[] {
  return FREE_DISTANCES.flatMap((distance) => {
    const measured = readings.flatMap(({ photoId, landmarks, measurement }) => {
      const called = distance === 'own' ? nameOfOwnDistance(landmarks) : null;
      const quantity = measurement.quantities.find(({ name, estimate }) => name === `free-${distance}` && estimate.value > 0);
      return quantity ? [{ called, photoId, length: measuredLength(quantity, photoId) }] : [];
    });
    return [...Map.groupBy(measured, ({ called }) => called)].flatMap(([called, same]): AbdomenDistance[] => {
      const estimate = estimateOf(combineReadings(same.map(({ length }) => length)));
      return estimate ? [{ distance, called, estimate, photoIds: [...new Set(same.map(({ photoId }) => photoId))] }] : [];
    });
  });
}
