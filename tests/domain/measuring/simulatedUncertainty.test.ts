import { describe, expect, it } from 'vitest';
import type { RectangleScale, ScaleMarks } from '../../../src/domain/measuring/calibration.ts';
import type { PictureFacts } from '../../../src/domain/measuring/camera.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import type { Quantity } from '../../../src/domain/measuring/quantity.ts';
import type { CarapaceHeight } from '../../../src/domain/measuring/reading.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { meanOf, type RandomSource, randomSource, standardDeviationOf } from '../../support/random.ts';
import { calibrated, cardSeenBy } from '../../support/simulatedCard.ts';
import { quantityOf } from '../../support/trueClicks.ts';

/** Simulations of whole photos (JCGM 101:2008, propagation of distributions): what the stated uncertainty must foretell. */
const ROUNDS = 4_000;

function jittered({ xPx, yPx }: ImagePoint, random: RandomSource, sigmaPx: number): ImagePoint {
  return { xPx: xPx + random.normal(sigmaPx), yPx: yPx + random.normal(sigmaPx) };
}

function jitteredCard(marks: RectangleScale, random: RandomSource): RectangleScale {
  const [a, b, c, d] = marks.corners;
  const move = (corner: ImagePoint): ImagePoint => jittered(corner, random, marks.pointingPx);
  return {
    ...marks,
    corners: [move(a), move(b), move(c), move(d)],
    widthMm: marks.widthMm + random.normal(marks.widthStandardUncertaintyMm),
    heightMm: marks.heightMm + random.normal(marks.heightStandardUncertaintyMm),
  };
}

function jitteredLandmarks(landmarks: Landmarks, random: RandomSource, sigmaPx: number): Landmarks {
  return Object.fromEntries(
    Object.entries(landmarks).map(([name, landmark]) => [
      name,
      'at' in landmark ? { ...landmark, at: jittered(landmark.at, random, sigmaPx) } : landmark,
    ]),
  );
}

/** These cameras draw straight lines straight; the rest of the stated uncertainty. */
function withoutDistortion({ estimate, budget }: Quantity): number {
  const part = budget.find(({ source }) => source === 'distortion')?.standardUncertainty ?? 0;
  return Math.sqrt(estimate.standardUncertainty ** 2 - part ** 2);
}

describe('first-order uncertainty against simulated photos', () => {
  it('foretells the scatter of a 50 mm length beside a card tilted by 15 degrees, clicked to 0.3 px', () => {
    const { see, picture } = pinhole(FIXTURE_A);
    const marks = cardSeenBy({ see }, { pointingPx: 0.3, widthStandardUncertaintyMm: 0, heightStandardUncertaintyMm: 0 });
    const landmarks: Landmarks = {
      'carapace-front': { state: 'placed', at: see(85.6 + 15, 26.99) },
      'carapace-rear': { state: 'placed', at: see(85.6 + 65, 26.99) },
    };
    const reading = (clicks: Landmarks) => ({
      landmarks: clicks,
      carapaceHeight: { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 } satisfies CarapaceHeight,
      pointingPx: 0.3,
    });
    const heightsMm = { 'carapace-front': 0, 'carapace-rear': 0 };
    const measured = (clicks: Landmarks, scale: ScaleMarks) => measure(reading(clicks), calibrated(scale, picture), { heightsMm });
    const length = (clicks: Landmarks, scale: ScaleMarks) => quantityOf(measured(clicks, scale), 'carapace-length').estimate;

    const stated = length(landmarks, marks);
    const random = randomSource(15);
    const drawn = Array.from(
      { length: ROUNDS },
      () => length(jitteredLandmarks(landmarks, random, 0.3), jitteredCard(marks, random)).value,
    );
    expect(stated.value).toBeCloseTo(50, 8);
    // A simulation of this very case, made apart with numpy, gave 0.1195 mm; its first order 0.1185 mm.
    const u = withoutDistortion(quantityOf(measured(landmarks, marks), 'carapace-length'));
    expect(u).toBeCloseTo(0.1185, 3);
    expect(Math.abs(standardDeviationOf(drawn) / u - 1)).toBeLessThan(0.04);
    expect(Math.abs(meanOf(drawn) - 50)).toBeLessThan((4 * u) / Math.sqrt(ROUNDS) + 0.002);
  });

  it('foretells the scatter of a raised carapace and of its ratio with every input uncertain at once', () => {
    const { see, picture } = pinhole({ ...FIXTURE_A, widthPx: 2016, heightPx: 1512, focalPx: 1500, distanceMm: 250 });
    const marks = cardSeenBy({ see }, { thicknessMm: 0.76 });
    const entered: CarapaceHeight = { kind: 'entered', heightMm: 6, standardUncertaintyMm: 1 };
    const above = entered.heightMm - marks.thicknessMm;
    const places = {
      'carapace-front': [100, 20],
      'carapace-rear': [104, 38],
      'carapace-left': [94, 31],
      'carapace-right': [110, 27],
    } as const;
    const trueHeight = 6;
    const landmarksAt = (height: () => number): Landmarks =>
      Object.fromEntries(Object.entries(places).map(([name, [x, y]]) => [name, { state: 'placed' as const, at: see(x, y, height()) }]));
    const run = (clicks: Landmarks, scale: ScaleMarks, from: PictureFacts) =>
      measure({ landmarks: clicks, carapaceHeight: entered, pointingPx: 1 }, calibrated(scale, from));

    const stated = run(
      landmarksAt(() => above),
      marks,
      picture,
    );
    const random = randomSource(6);
    const equivalentMm = picture.facts.focalLength35Mm ?? Number.NaN;
    const unevenness = 0.05 * Math.hypot(16, 4);
    const drawn = Array.from({ length: ROUNDS }, () => {
      // The truth varies about what the keeper entered as much as the keeper's doubt.
      const common = trueHeight + random.normal(1);
      const clicks = landmarksAt(() => common + random.normal(unevenness) - marks.thicknessMm);
      const focal = equivalentMm * (1 + random.normal(Math.hypot(0.02, 0.5 / Math.sqrt(3) / equivalentMm)));
      return run(jitteredLandmarks(clicks, random, 1), jitteredCard(marks, random), { ...picture, facts: { focalLength35Mm: focal } });
    });
    for (const name of ['carapace-length', 'carapace-width', 'carapace-ratio']) {
      const { standardUncertainty } = quantityOf(stated, name).estimate;
      const scatter = standardDeviationOf(drawn.map((measurement) => quantityOf(measurement, name).estimate.value));
      expect(Math.abs(scatter / standardUncertainty - 1), name).toBeLessThan(0.06);
    }
    // What the two lengths share cancels in the ratio.
    const relative = (name: string): number => {
      const { value, standardUncertainty } = quantityOf(stated, name).estimate;
      return standardUncertainty / value;
    };
    expect(relative('carapace-ratio')).toBeLessThan(0.99 * Math.hypot(relative('carapace-length'), relative('carapace-width')));
  });

  it('covers the error of two points on photos tilted by hand', () => {
    const stated = twoPoints(0, 0);
    const random = randomSource(8);
    const squares = Array.from({ length: ROUNDS }, () => {
      // Slopes of the plane as assumed for a phone held by hand, see twoPointView.
      const [slopeX, slopeY] = [random.normal(0.145), random.normal(0.145)];
      const tiltDeg = (Math.atan(Math.hypot(slopeX, slopeY)) * 180) / Math.PI;
      return (twoPoints(tiltDeg, (Math.atan2(slopeY, slopeX) * 180) / Math.PI).value - 20) ** 2;
    });
    const tilt = stated.budget.find((part) => part.source === 'tilt-unknown')?.standardUncertainty ?? 0;
    expect(stated.value).toBeCloseTo(20, 8);
    expect(Math.sqrt(meanOf(squares)) / tilt).toBeGreaterThan(0.85);
    expect(Math.sqrt(meanOf(squares)) / tilt).toBeLessThan(1.15);
  });
});

/** A length of 20 mm, 50 mm beside a rule, measured on two of its ticks. */
function twoPoints(tiltDeg: number, axisDeg: number) {
  const { see, picture } = pinhole({ ...FIXTURE_A, tiltDeg, axisDeg, rollDeg: 0 });
  const marks: ScaleMarks = {
    kind: 'two-points',
    ends: [see(0, 0), see(100, 0)],
    distanceMm: 100,
    distanceStandardUncertaintyMm: 0.087,
    pointingPx: 1,
    heightMm: 0,
  };
  const landmarks: Landmarks = {
    'carapace-front': { state: 'placed', at: see(50, 50) },
    'carapace-rear': { state: 'placed', at: see(62, 66) },
  };
  const flat: CarapaceHeight = { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 };
  const heightsMm = { 'carapace-front': 0, 'carapace-rear': 0 };
  const quantity = quantityOf(
    measure({ landmarks, carapaceHeight: flat, pointingPx: 1 }, calibrated(marks, picture), { heightsMm }),
    'carapace-length',
  );
  return { value: quantity.estimate.value, budget: quantity.budget };
}
