import { z } from 'zod';
import { LEG_IDS, type LegId } from '../../measuring/landmarks.ts';
import { Estimate } from '../../measuring/quantity.ts';
import { combineReadings } from '../combine.ts';
import { estimateOf, isReplaced, lengthsNamed, type SkinReading } from '../skinSizes.ts';

/** One leg on one skin. `missing` and `regenerated` as any reading says so; a regenerated leg can still have a length. */
export const LegSize = z
  .object({ leg: z.enum(LEG_IDS), state: z.enum(['whole', 'regenerated', 'missing', 'not-measured']), lengthMm: Estimate.nullable() })
  .meta({ id: 'LegSize' });
export type LegSize = z.infer<typeof LegSize>;

/** Every leg of one skin, femur to tarsus, from all its readings. */
export function legSizesOf(readings: readonly SkinReading[]): LegSize[] {
  return LEG_IDS.map((leg) => {
    const name = `leg-${leg}`;
    const lengthMm = estimateOf(combineReadings(lengthsNamed(readings, name)));
    const isGone = readings.some(({ measurement }) => measurement.absent.some((part) => part.name === name && part.reason === 'missing'));
    const isRegrown = !isGone && readings.some(({ measurement }) => isReplaced(measurement, name));
    if (isGone) return { leg, state: 'missing', lengthMm: null };
    return { leg, state: isRegrown ? 'regenerated' : lengthMm ? 'whole' : 'not-measured', lengthMm };
  });
}

/** The leg of the other side. */
export function partnerOf(leg: LegId): LegId {
  const other = LEG_IDS.find((candidate) => candidate[0] !== leg[0] && candidate[1] === leg[1]);
  if (!other) throw new RangeError(`Expected a leg opposite ${leg}`);
  return other;
}
