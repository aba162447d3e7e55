import { calibrate } from '../../domain/measuring/calibrate.ts';
import type { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import { measure } from '../../domain/measuring/measure.ts';
import type { Estimate, Measurement } from '../../domain/measuring/quantity.ts';
import type { Reading } from '../../domain/measuring/reading.ts';
import { pointingFromRepeats } from '../../domain/measuring/repeats.ts';
import type { Photo } from '../../domain/photo/photo.ts';

/** A reading with what it gives; null without a calibration, or under one that is not sound. */
export interface MeasuredReading {
  readonly reading: Reading;
  readonly measurement: Measurement | null;
}

/**
 * Computes every size anew from the stored geometry, as the Bench does on its side: with the scatter of repeated clicks
 * where the photo was read often enough to tell it, else with what each reading assumes.
 *
 * @param readings all of this photo.
 */
export function measureReadings(photo: Photo, calibration: CalibrationRecord | null, readings: readonly Reading[]): MeasuredReading[] {
  const calibrated = calibration?.marks ? calibrate(calibration.marks, photo) : null;
  const repeats = pointingFromRepeats(readings);
  const options = repeats === null ? {} : { pointingPx: repeats.pointingPx };
  return readings.map((reading) => ({ reading, measurement: calibrated?.ok ? measure(reading, calibrated.value, options) : null }));
}

export function carapaceLengthOf(measurement: Measurement | null): Estimate | null {
  return measurement?.quantities.find((quantity) => quantity.name === 'carapace-length')?.estimate ?? null;
}
