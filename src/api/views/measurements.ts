import { calibrate } from '../../domain/measuring/calibrate.ts';
import type { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import { CARAPACE_LANDMARKS, type Landmarks } from '../../domain/measuring/landmarks.ts';
import { type MeasuringOptions, measure } from '../../domain/measuring/measure.ts';
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
  const options = optionsFrom(readings);
  return readings.map((reading) => ({ reading, measurement: calibrated?.ok ? measure(reading, calibrated.value, options) : null }));
}

/**
 * The carapace length alone, the same as `measureReadings` gives it. A list of all animals asks for many, and the legs with
 * their uncertainties would take most of the time.
 *
 * @param readings all of this photo.
 */
export function carapaceLengthOf(
  { photo, calibration, reading }: { readonly photo: Photo; readonly calibration: CalibrationRecord; readonly reading: Reading },
  readings: readonly Reading[],
): Estimate | null {
  const calibrated = calibration.marks && calibrate(calibration.marks, photo);
  if (!calibrated?.ok) return null;
  const landmarks: Landmarks = {};
  for (const name of CARAPACE_LANDMARKS) {
    const landmark = reading.landmarks[name];
    if (landmark) landmarks[name] = landmark;
  }
  const { quantities } = measure({ ...reading, landmarks }, calibrated.value, optionsFrom(readings));
  return quantities.find((quantity) => quantity.name === 'carapace-length')?.estimate ?? null;
}

function optionsFrom(readings: readonly Reading[]): MeasuringOptions {
  const repeats = pointingFromRepeats(readings);
  return repeats === null ? {} : { pointingPx: repeats.pointingPx };
}
