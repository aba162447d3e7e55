import { describe, expect, it } from 'vitest';
import { type Landmarks, LEG_JOINTS, LEG_SEGMENTS, type LegId, legLandmark } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { Measurement } from '../../../src/domain/measuring/quantity.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { calibrated, cardSeenBy } from '../../support/simulatedCard.ts';
import { quantityOf } from '../../support/trueClicks.ts';

interface PublishedSpecimen {
  readonly name: string;
  readonly carapaceMm: { readonly length: number; readonly width: number };
  /**
   * Femur, patella, tibia, metatarsus, tarsus as printed, and their sum, mm. `printedMm`: a total that is printed with a digit more, which five
   * rounded segments meet to five half units of theirs.
   */
  readonly legs: Partial<Record<LegId, { readonly segmentsMm: readonly number[]; readonly totalMm: number; readonly printedMm?: number }>>;
}

const PUBLISHED: readonly PublishedSpecimen[] = [
  {
    // Yamamoto, Lucas & Brescovit 2012, Zootaxa 3172:1-19; male holotype IBSP 2605.
    name: 'Catanduba araguaia',
    carapaceMm: { length: 8.32, width: 7.12 },
    legs: {
      L1: { segmentsMm: [7.28, 4.24, 4.72, 4.88, 3.52], totalMm: 24.64 },
      L2: { segmentsMm: [6.56, 3.68, 4.64, 5.12, 3.68], totalMm: 23.68 },
      L3: { segmentsMm: [5.68, 3.04, 3.84, 5.36, 3.52], totalMm: 21.44 },
      L4: { segmentsMm: [7.44, 3.44, 5.44, 7.44, 4.16], totalMm: 27.92 },
    },
  },
  {
    // Hamilton, Hendrixson & Bond 2016, ZooKeys 560:1-340; female paratype APH_1393.
    name: 'Aphonopelma madera',
    carapaceMm: { length: 15.72, width: 13.73 },
    legs: {
      L1: { segmentsMm: [12.62, 5.31, 9.22, 6.56, 5.58], totalMm: 39.29 },
      L3: { segmentsMm: [8.79, 4.52, 6.84, 6.81, 5.73], totalMm: 32.69 },
      L4: { segmentsMm: [12.38, 4.87, 9.55, 9.91, 6.47], totalMm: 43.18 },
    },
  },
  {
    // The same, male holotype APH_3177. The total of its leg IV is not printed.
    name: 'Aphonopelma madera, male',
    carapaceMm: { length: 7.81, width: 7.48 },
    legs: {
      L1: { segmentsMm: [8.37, 3.28, 7.32, 5.01, 3.85], totalMm: 27.83, printedMm: 27.831 },
      L3: { segmentsMm: [6.21, 2.58, 4.98, 5.04, 4.14], totalMm: 22.95, printedMm: 22.958 },
      L4: { segmentsMm: [7.52, 2.6, 6.76, 7.04, 4.83], totalMm: 28.75 },
    },
  },
  {
    // The same, male holotype APH_0925; totals are our sums.
    name: 'Aphonopelma moellendorfi',
    carapaceMm: { length: 17.23, width: 15.48 },
    legs: {
      L1: { segmentsMm: [17.53, 7.25, 13.73, 13.11, 8.2], totalMm: 59.82 },
      L3: { segmentsMm: [14.27, 5.79, 11.18, 13.14, 7.48], totalMm: 51.86 },
      L4: { segmentsMm: [15.96, 5.88, 13.78, 16.62, 8.77], totalMm: 61.01 },
    },
  },
];

/** Photographs the specimen lying flat on the card's plane, its legs bent in zigzag, by a camera tilted 15 degrees. */
function measured({ carapaceMm, legs }: PublishedSpecimen): Measurement {
  const { see, picture } = pinhole(FIXTURE_A);
  const landmarks: Landmarks = {
    'carapace-front': { state: 'placed', at: see(40, 80) },
    'carapace-rear': { state: 'placed', at: see(40, 80 + carapaceMm.length) },
    'carapace-left': { state: 'placed', at: see(30, 90) },
    'carapace-right': { state: 'placed', at: see(30 + carapaceMm.width, 90) },
  };
  Object.entries(legs).forEach(([leg, { segmentsMm }], row) => {
    let [x, y] = [-20, 60 + 15 * row];
    LEG_JOINTS.forEach((joint, index) => {
      landmarks[legLandmark(leg as LegId, joint)] = { state: 'placed', at: see(x, y) };
      const bend = index % 2 === 0 ? 0.6 : -0.3;
      x += (segmentsMm[index] ?? 0) * Math.cos(bend);
      y += (segmentsMm[index] ?? 0) * Math.sin(bend);
    });
  });
  const reading = { landmarks, carapaceHeight: { kind: 'entered' as const, heightMm: 0, standardUncertaintyMm: 0 }, pointingPx: 1.5 };
  return measure(reading, calibrated(cardSeenBy({ see }), picture));
}

describe.each(PUBLISHED)('$name, as published', (specimen) => {
  const measurement = measured(specimen);

  it('has the printed carapace and its ratio', () => {
    const { length, width } = specimen.carapaceMm;
    expect(quantityOf(measurement, 'carapace-length').estimate.value).toBeCloseTo(length, 8);
    expect(quantityOf(measurement, 'carapace-width').estimate.value).toBeCloseTo(width, 8);
    expect(quantityOf(measurement, 'carapace-ratio').estimate.value).toBeCloseTo(length / width, 8);
  });

  it('has the printed segments, and leg lengths that are their sums from femur to tarsus', () => {
    for (const [leg, { segmentsMm, totalMm, printedMm = totalMm }] of Object.entries(specimen.legs)) {
      LEG_SEGMENTS.forEach((segment, index) => {
        expect(quantityOf(measurement, `leg-${leg}-${segment}`).estimate.value).toBeCloseTo(segmentsMm[index] ?? Number.NaN, 8);
      });
      expect(quantityOf(measurement, `leg-${leg}`).estimate.value).toBeCloseTo(totalMm, 8);
      expect(Math.abs(totalMm - printedMm)).toBeLessThanOrEqual(5 * 0.005);
    }
  });
});
