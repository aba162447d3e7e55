import { type Calibration, calibrate } from '../../src/domain/measuring/calibrate.ts';
import type { ScaleMarks } from '../../src/domain/measuring/calibration.ts';
import { type MeasuringOptions, measure } from '../../src/domain/measuring/measure.ts';
import type { Measurement, Quantity } from '../../src/domain/measuring/quantity.ts';
import { type PhotoTruth, photoTruths, pictureOf, rectangleOn, trueClicksOn } from './photoTruth.ts';

/** Carapace length of one rendered photo, measured with the true pixels of corners and landmarks as clicks. */
export interface TrueClickResult {
  readonly photo: string;
  readonly object: 'card' | 'board' | 'rule';
  readonly trueMm: number;
  readonly measuredMm: number;
  readonly errorPercent: number;
  /** What the error would be had the carapace been taken to lie on the object's plane. */
  readonly uncorrectedErrorPercent: number;
}

export function calibrationOf(truth: PhotoTruth, marks: ScaleMarks): Calibration {
  const calibration = calibrate(marks, pictureOf(truth));
  if (!calibration.ok) throw new Error(`${truth.name}: ${calibration.failure.code}`);
  return calibration.value;
}

/** All quantities with true clicks under a calibration, the carapace height assumed unless the options tell it. */
export function measureTrueClicks(truth: PhotoTruth, calibration: Calibration, options: MeasuringOptions): Measurement {
  const { landmarks } = trueClicksOn(truth);
  return measure({ landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1 }, calibration, options);
}

export function quantityOf(measurement: Measurement, name: string): Quantity {
  const found = measurement.quantities.find((quantity) => quantity.name === name);
  if (!found) throw new Error(`${name} was not measured: ${measurement.absent.find((quantity) => quantity.name === name)?.reason}`);
  return found;
}

export function trueMm(truth: PhotoTruth, name: string): number {
  const value = truth.measurements_mm[name];
  if (value === undefined) throw new Error(`${truth.name} tells no ${name}`);
  return value;
}

/** Every rendered dorsal photo against its truth; landmark heights as the truth has them. */
export function trueClickResults(): readonly TrueClickResult[] {
  return photoTruths().map((truth) => {
    const { object, marks } = rectangleOn(truth);
    const measurement = measureTrueClicks(truth, calibrationOf(truth, marks), { heightsMm: trueClicksOn(truth).heightsMm });
    const { estimate, heightCorrection } = quantityOf(measurement, 'carapace-length');
    const expected = trueMm(truth, 'carapace_length');
    if (heightCorrection === null) throw new Error(`${truth.name}: no height correction was made`);
    return {
      photo: truth.name,
      object,
      trueMm: expected,
      measuredMm: estimate.value,
      errorPercent: 100 * (estimate.value / expected - 1),
      uncorrectedErrorPercent: 100 * ((estimate.value - heightCorrection) / expected - 1),
    };
  });
}
