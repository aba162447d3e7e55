import { describe, expect, it } from 'vitest';
import type { ScaleMarks } from '../../../src/domain/measuring/calibration.ts';
import type { PictureFacts } from '../../../src/domain/measuring/camera.ts';
import { type LandmarkName, type Landmarks, type LEG_IDS, legLandmark } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { Measurement, type Quantity } from '../../../src/domain/measuring/quantity.ts';
import type { CarapaceHeight } from '../../../src/domain/measuring/reading.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { calibrated, cardSeenBy } from '../../support/simulatedCard.ts';
import { quantityOf } from '../../support/trueClicks.ts';

const STRAIGHT = pinhole({ ...FIXTURE_A, tiltDeg: 0, rollDeg: 0 });
const SILENT: PictureFacts = { ...STRAIGHT.picture, facts: { focalLength35Mm: null } };
const CARD = cardSeenBy(STRAIGHT);
const ENTERED: CarapaceHeight = { kind: 'entered', heightMm: 8, standardUncertaintyMm: 1 };

/** A carapace 20 mm long and 18 mm wide, `zMm` above the card's plane. */
function carapace(zMm: number, { see } = STRAIGHT): Landmarks {
  return {
    'carapace-front': { state: 'placed', at: see(60, 60, zMm) },
    'carapace-rear': { state: 'placed', at: see(60, 80, zMm) },
    'carapace-left': { state: 'placed', at: see(51, 70, zMm) },
    'carapace-right': { state: 'placed', at: see(69, 70, zMm) },
  };
}

function reading(landmarks: Landmarks, carapaceHeight: CarapaceHeight = ENTERED, pointingPx = 1.5) {
  return { landmarks, carapaceHeight, pointingPx };
}

function under(marks: ScaleMarks, picture = STRAIGHT.picture) {
  return calibrated(marks, picture);
}

function share(quantity: Quantity, source: Quantity['budget'][number]['source']): number {
  return quantity.budget.find((part) => part.source === source)?.standardUncertainty ?? 0;
}

describe('height of the carapace', () => {
  it('is corrected along the lines of sight, and the correction is told', () => {
    const length = quantityOf(measure(reading(carapace(8)), under(CARD)), 'carapace-length');
    expect(length.estimate.value).toBeCloseTo(20, 8);
    // From 300 mm a length 8 mm up reads 300 / 292 times too large: 20.548 mm.
    expect(length.heightCorrection).toBeCloseTo(20 - (20 * 300) / 292, 6);
    expect(length.flags).not.toContain('height-assumed');
  });

  it('counts from the table, the card lying on it with its thickness', () => {
    const thick = under(cardSeenBy(STRAIGHT, { thicknessMm: 0.76 }));
    const length = quantityOf(measure(reading(carapace(8 - 0.76)), thick), 'carapace-length');
    expect(length.estimate.value).toBeCloseTo(20, 8);
  });

  it('is 0.35 of the true width by default, found together with it, and flagged', () => {
    const height = 0.35 * 18;
    const thick = under(cardSeenBy(STRAIGHT, { thicknessMm: 2 }));
    const assumed = measure(reading(carapace(height - 2), { kind: 'assumed' }), thick);
    expect(quantityOf(assumed, 'carapace-width').estimate.value).toBeCloseTo(18, 8);
    expect(quantityOf(assumed, 'carapace-length').estimate.value).toBeCloseTo(20, 8);
    expect(quantityOf(assumed, 'carapace-length').flags).toContain('height-assumed');
    expect(share(quantityOf(assumed, 'carapace-length'), 'height')).toBeGreaterThan(
      share(quantityOf(measure(reading(carapace(height - 2)), thick), 'carapace-length'), 'height'),
    );
  });

  it('carries its own uncertainty u_h / (Z - h) and that of the camera distance, h u_Z / Z^2 over (Z - h) / Z', () => {
    const length = quantityOf(measure(reading(carapace(8)), under(CARD)), 'carapace-length');
    const equivalentMm = STRAIGHT.picture.facts.focalLength35Mm ?? Number.NaN;
    const distanceRelative = Math.hypot(0.5 / Math.sqrt(3) / equivalentMm, 0.02);
    expect(share(length, 'camera-distance') / 20).toBeCloseTo(((8 / 300) * distanceRelative) / (292 / 300), 5);
    // Straight below the camera the height common to both ends is nearly all.
    const { see } = STRAIGHT;
    const below: Landmarks = {
      'carapace-front': { state: 'placed', at: see(42.8, 26.99 - 10, 8) },
      'carapace-rear': { state: 'placed', at: see(42.8, 26.99 + 10, 8) },
    };
    const doubtful: CarapaceHeight = { kind: 'entered', heightMm: 8, standardUncertaintyMm: 5 };
    const central = quantityOf(measure(reading(below, doubtful), under(CARD)), 'carapace-length');
    expect(share(central, 'height') / ((20 * 5) / 292)).toBeGreaterThan(1);
    expect(share(central, 'height') / ((20 * 5) / 292)).toBeLessThan(1.05);
  });

  it('cannot be corrected without a focal length: the likely size of the correction stands in the uncertainty', () => {
    const silent = quantityOf(measure(reading(carapace(8)), under(CARD, SILENT)), 'carapace-length');
    expect(silent.estimate.value).toBeCloseTo((20 * 300) / 292, 8);
    expect(silent.heightCorrection).toBeNull();
    expect(silent.flags).toContain('height-not-corrected');
    expect(share(silent, 'camera-distance')).toBe(0);
    expect(Math.abs(silent.estimate.value - 20)).toBeLessThan(silent.estimate.expandedUncertainty);
    expect(share(silent, 'height')).toBeGreaterThan(0.5);
  });

  it('that differs between two ends gives their distance in space', () => {
    const { see } = STRAIGHT;
    const landmarks: Landmarks = {
      'carapace-front': { state: 'placed', at: see(60, 60, 3) },
      'carapace-rear': { state: 'placed', at: see(60, 64, 6) },
    };
    const heightsMm = { 'carapace-front': 3, 'carapace-rear': 6 };
    expect(quantityOf(measure(reading(landmarks), under(CARD), { heightsMm }), 'carapace-length').estimate.value).toBeCloseTo(5, 8);
  });

  it('above the camera leaves nothing to measure', () => {
    const absurd: CarapaceHeight = { kind: 'entered', heightMm: 301, standardUncertaintyMm: 1 };
    const { quantities, absent } = measure(reading(carapace(8), absurd), under(CARD));
    expect(quantities).toEqual([]);
    expect(absent).toContainEqual({ name: 'carapace-length', reason: 'no-position' });
  });
});

describe('uncertainty', () => {
  it('of pointing is sqrt 2 clicks for a length beside the camera axis, and smaller with repeats that agree', () => {
    const flat: CarapaceHeight = { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 };
    const length = quantityOf(measure(reading(carapace(0), flat), under(CARD)), 'carapace-length');
    expect(share(length, 'pointing')).toBeCloseTo(Math.SQRT2 * 1.5 * 0.1, 4);
    const repeated = quantityOf(measure(reading(carapace(0), flat), under(CARD), { pointing: 0.5 }), 'carapace-length');
    expect(share(repeated, 'pointing')).toBeCloseTo(share(length, 'pointing') / 3, 8);
  });

  it('of the card is its relative size, and cancels in a ratio of parallel lengths only', () => {
    const wide = cardSeenBy(STRAIGHT, { widthStandardUncertaintyMm: 0.856, heightStandardUncertaintyMm: 0 });
    const measurement = measure(reading(carapace(0), { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 }), under(wide));
    expect(share(quantityOf(measurement, 'carapace-width'), 'scale-object') / 18).toBeCloseTo(0.01, 6);
    expect(share(quantityOf(measurement, 'carapace-length'), 'scale-object')).toBeCloseTo(0, 9);
    expect(share(quantityOf(measurement, 'carapace-ratio'), 'scale-object') / (20 / 18)).toBeCloseTo(0.01, 4);
    const high = cardSeenBy(STRAIGHT, { widthStandardUncertaintyMm: 0, heightStandardUncertaintyMm: 0.5398 });
    const onHigh = measure(reading(carapace(0), { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 }), under(high));
    expect(share(quantityOf(onHigh, 'carapace-length'), 'scale-object') / 20).toBeCloseTo(0.01, 6);
    expect(share(quantityOf(onHigh, 'carapace-width'), 'scale-object')).toBeCloseTo(0, 9);
    const rule: ScaleMarks = {
      kind: 'two-points',
      ends: [STRAIGHT.see(0, 0), STRAIGHT.see(80, 0)],
      distanceMm: 80,
      distanceStandardUncertaintyMm: 0.8,
      pointingPx: 1,
      heightMm: 0,
    };
    const onRule = measure(reading(carapace(0), { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 }), under(rule));
    expect(share(quantityOf(onRule, 'carapace-length'), 'scale-object') / 20).toBeCloseTo(0.01, 6);
    expect(share(quantityOf(onRule, 'carapace-ratio'), 'scale-object')).toBeCloseTo(0, 9);
  });

  it('of unknown tilt is told for two points, and grows away from the rule', () => {
    const { see } = STRAIGHT;
    const rule: ScaleMarks = {
      kind: 'two-points',
      ends: [see(0, 0), see(80, 0)],
      distanceMm: 80,
      distanceStandardUncertaintyMm: 0.05,
      pointingPx: 1,
      heightMm: 0,
    };
    const across = (y: number): Landmarks => ({
      'carapace-left': { state: 'placed', at: see(30, y) },
      'carapace-right': { state: 'placed', at: see(50, y) },
    });
    const flat: CarapaceHeight = { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 };
    const near = quantityOf(measure(reading(across(2), flat), under(rule)), 'carapace-width');
    const far = quantityOf(measure(reading(across(60), flat), under(rule)), 'carapace-width');
    expect(near.flags).toContain('tilt-unknown');
    expect(share(far, 'tilt-unknown')).toBeGreaterThan(5 * share(near, 'tilt-unknown'));
    // Depth changes by slope x distance / camera distance: 0.145 x 60 / 300 = 2.9 %.
    expect(share(far, 'tilt-unknown') / 20).toBeCloseTo((0.145 * 60) / 300, 2);
  });

  it('is expanded by k = 2, and its budget adds up', () => {
    for (const quantity of measure(reading(carapace(8)), under(CARD)).quantities) {
      expect(quantity.estimate.expandedUncertainty).toBe(2 * quantity.estimate.standardUncertainty);
      const sum = quantity.budget.reduce((total, part) => total + part.standardUncertainty ** 2, 0);
      expect(Math.sqrt(sum)).toBeCloseTo(quantity.estimate.standardUncertainty, 10);
      expect(quantity.budget.reduce((total, part) => total + part.share, 0)).toBeCloseTo(1, 10);
    }
  });
});

describe('what is measured and what is absent', () => {
  const { see } = STRAIGHT;
  const joints = ['trochanter-femur', 'femur-patella', 'patella-tibia', 'tibia-metatarsus', 'metatarsus-tarsus', 'tarsus-tip'] as const;
  const leg = (id: (typeof LEG_IDS)[number], state: 'placed' | 'regenerated' = 'placed'): Landmarks =>
    Object.fromEntries(joints.map((joint, index) => [legLandmark(id, joint), { state, at: see(10 * index, 70) }]));

  it('leaves a missing leg out with that reason, never as zero', () => {
    const landmarks: Landmarks = { ...leg('L1'), ...leg('L2') };
    for (const joint of joints) landmarks[legLandmark('L2', joint)] = { state: 'missing' };
    landmarks[legLandmark('L3', 'femur-patella')] = { state: 'not-visible' };
    const { quantities, absent } = measure(reading(landmarks), under(CARD));
    expect(quantities.map((quantity) => quantity.name)).toContain('leg-L1');
    expect(quantities.some((quantity) => quantity.name.startsWith('leg-L2'))).toBe(false);
    expect(absent).toContainEqual({ name: 'leg-L2', reason: 'missing' });
    expect(absent).toContainEqual({ name: 'leg-L2-tarsus', reason: 'missing' });
    expect(absent).toContainEqual({ name: 'leg-L3', reason: 'not-visible' });
    expect(absent).toContainEqual({ name: 'leg-L3-tarsus', reason: 'not-placed' });
    expect(absent).toContainEqual({ name: 'carapace-length', reason: 'not-placed' });
  });

  it('names every quantity once, measured or absent', () => {
    const { quantities, absent } = measure(reading({}), under(CARD));
    expect(quantities).toEqual([]);
    expect(new Set(absent.map((quantity) => quantity.name)).size).toBe(absent.length);
    // Carapace 3, eight legs with five segments each, two spans.
    expect(absent).toHaveLength(3 + 8 * 6 + 2);
  });

  it('measures a leg that grew back and says so', () => {
    const found = quantityOf(measure(reading(leg('R3', 'regenerated')), under(CARD)), 'leg-R3');
    expect(found.flags).toContain('regenerated');
    expect(found.estimate.value).toBeCloseTo(50, 6);
  });

  it('measures the laid-out span between opposite tips and flags it as a matter of posture', () => {
    const tips: readonly [LandmarkName, number, number][] = [
      [legLandmark('L1', 'tarsus-tip'), 20, 60],
      [legLandmark('R4', 'tarsus-tip'), 80, 140],
    ];
    const landmarks: Landmarks = Object.fromEntries(tips.map(([name, x, y]) => [name, { state: 'placed', at: see(x, y) }]));
    const { quantities } = measure(reading(landmarks), under(CARD));
    expect(quantities.map((quantity) => quantity.name)).toEqual(['span-L1-R4']);
    expect(quantities[0]?.estimate.value).toBeCloseTo(100, 6);
    expect(quantities[0]?.flags).toContain('posture-dependent');
  });

  it('flags what lies far from the card', () => {
    const landmarks: Landmarks = {
      'carapace-front': { state: 'placed', at: see(60, 150) },
      'carapace-rear': { state: 'placed', at: see(60, 130) },
    };
    expect(quantityOf(measure(reading(landmarks), under(CARD)), 'carapace-length').flags).toContain('far-from-scale');
    expect(quantityOf(measure(reading(carapace(8)), under(CARD)), 'carapace-length').flags).not.toContain('far-from-scale');
  });

  it('has no position for a click beyond the horizon', () => {
    const steep = pinhole({ ...FIXTURE_A, tiltDeg: 60, axisDeg: 0, rollDeg: 0 });
    const sky = [-1, 1].map(
      (side): Landmarks => ({
        'carapace-front': { state: 'placed', at: steep.see(40, 20) },
        'carapace-rear': { state: 'placed', at: { xPx: 2016, yPx: 1512 + side * 1_800 } },
      }),
    );
    const reasons = sky.map((landmarks) => {
      const { absent } = measure(reading(landmarks), under(cardSeenBy(steep), steep.picture));
      return absent.find((quantity) => quantity.name === 'carapace-length')?.reason ?? 'measured';
    });
    expect(reasons.toSorted()).toEqual(['measured', 'no-position']);
  });

  it('answers in the shape that is stored and sent', () => {
    const measurement = measure(reading({ ...carapace(8), ...leg('L1') }), under(CARD));
    expect(Measurement.parse(measurement)).toEqual(measurement);
  });
});
