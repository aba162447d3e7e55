import type { MeasuredSkin } from '../../archive/records/animals.ts';
import { type Pointing, pointingFor } from '../../domain/agreement/pointing.ts';
import { type SkinReading, sizesOf } from '../../domain/growth/skinSizes.ts';
import { calibrate } from '../../domain/measuring/calibrate.ts';
import type { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import { isContradicted } from '../../domain/measuring/disagreements.ts';
import { CARAPACE_LANDMARKS, type Landmarks } from '../../domain/measuring/landmarks.ts';
import { measure } from '../../domain/measuring/measure.ts';
import { doubtsAbout, type PlausibilityWarning } from '../../domain/measuring/plausibility.ts';
import type { Estimate, Measurement } from '../../domain/measuring/quantity.ts';
import type { Reading } from '../../domain/measuring/reading.ts';
import { type Photo, shownOn } from '../../domain/photo/photo.ts';

/** A reading with what it gives; null without a calibration, or under one that is not sound. */
export interface MeasuredReading {
  readonly reading: Reading;
  readonly measurement: Measurement | null;
  readonly doubts: readonly PlausibilityWarning[];
  /** A second object in the photo contradicts its scale. */
  readonly isScaleDoubted: boolean;
}

/**
 * Computes every size anew from the stored geometry, as the Bench does on its side: with the pointing error that each reading states
 * or that the observer's repeated passes show, over this and all other photos (`pointingFor` says which).
 *
 * @param readings all of this photo.
 * @param narrowed leaves only what is to be measured.
 */
export function measureReadings(
  photo: Photo,
  calibration: CalibrationRecord | null,
  readings: readonly Reading[],
  pointing: Pointing,
  narrowed: (reading: Reading) => Reading = (reading) => reading,
): MeasuredReading[] {
  const calibrated = calibration?.marks ? calibrate(calibration.marks, photo) : null;
  const isScaleDoubted = calibration?.marks ? isContradicted(calibration.marks, calibration.check, photo) : false;
  const seenFrom = photo.view === 'ventral' ? 'below' : 'above';
  return readings.map((whole) => {
    const reading = narrowed(whole);
    const measurement = calibrated?.ok
      ? measure(reading, calibrated.value, {
          pointing: (name) => pointingFor(name, pointing.get(reading.observer), reading.pointingPx),
          shown: shownOn(photo),
        })
      : null;
    return { reading: whole, measurement, doubts: doubtsAbout(reading.landmarks, measurement, seenFrom), isScaleDoubted };
  });
}

/** What `measureReadings` found, as the sizes of a skin are combined from it. */
export function skinReadingsOf(photoId: string, measured: readonly MeasuredReading[]): SkinReading[] {
  return measured.flatMap(({ reading, measurement, doubts, isScaleDoubted }) =>
    measurement ? [{ readingId: reading.id, photoId, measurement, doubts, isScaleDoubted }] : [],
  );
}

/**
 * The carapace length of a skin alone, the same as its sizes give it. A list of all animals asks for many, and the legs with
 * their uncertainties would take most of the time.
 */
export function carapaceLengthOf({ photos }: MeasuredSkin, pointing: Pointing): Estimate | null {
  const readings = photos.flatMap(({ photo, calibration, readings }) =>
    skinReadingsOf(photo.id, measureReadings(photo, calibration, readings, pointing, carapaceOnly)),
  );
  return sizesOf(readings).carapaceLengthMm;
}

/** Narrows a reading to the four points of the carapace. */
export function carapaceOnly(reading: Reading): Reading {
  const landmarks: Landmarks = {};
  for (const name of CARAPACE_LANDMARKS) {
    const landmark = reading.landmarks[name];
    if (landmark) landmarks[name] = landmark;
  }
  return { ...reading, landmarks };
}
