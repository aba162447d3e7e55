import { describe, expect, it } from 'vitest';
import { budgetInDetail } from '../../../src/domain/measuring/budget.ts';
import type { FreeDistance, Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { abdomenDistancesOf } from '../../../src/domain/sexing/abdomenDistances.ts';
import { abdomenTruths, imagePoint, type PhotoTruth, rectangleOn, ruleTicksOn } from '../../support/photoTruth.ts';
import { calibrationOf, quantityOf, trueMm } from '../../support/trueClicks.ts';

/** Rendered photos of invented abdomens by a separate program, with exact truth beside them: the truth's points and length of each distance. */
const IN_TRUTH: readonly (readonly [FreeDistance, string, string, string])[] = [
  ['book-lungs', 'lung_anterior_left_centre', 'lung_anterior_right_centre', 'anterior_lung_separation'],
  // The furrow of the truth is measured along its fold through the middle; end to end is worked out from its points.
  ['furrow', 'furrow_left', 'furrow_right', ''],
  // The rendered receptacles are two stalks: the distance of their tips stands for their width.
  ['receptacle-width', 'spermatheca_left_tip', 'spermatheca_right_tip', 'spermatheca_tip_separation'],
  ['receptacle-height', 'spermatheca_left_base', 'spermatheca_left_tip', ''],
];

/** Clicks on the true pixels of every distance that the photo shows, and how long each truly is, mm. */
function truthOf(truth: PhotoTruth): {
  landmarks: Landmarks;
  lengthsMm: ReadonlyMap<FreeDistance, number>;
  heightsMm: Record<string, number>;
} {
  const landmarks: Landmarks = {};
  const lengthsMm = new Map<FreeDistance, number>();
  const heightsMm: Record<string, number> = {};
  for (const [distance, from, to, length] of IN_TRUTH) {
    const ends = [truth.landmarks[from], truth.landmarks[to]] as const;
    const [one, other] = ends;
    if (!one || !other) continue;
    landmarks[`free-${distance}-from`] = { state: 'placed', at: imagePoint(one.px) };
    landmarks[`free-${distance}-to`] = { state: 'placed', at: imagePoint(other.px) };
    heightsMm[`free-${distance}-from`] = one.xyz_mm[2];
    heightsMm[`free-${distance}-to`] = other.xyz_mm[2];
    const inSpace = Math.hypot(...one.xyz_mm.map((value, axis) => value - (other.xyz_mm[axis] ?? Number.NaN)));
    lengthsMm.set(distance, length === '' ? inSpace : trueMm(truth, length));
  }
  return { landmarks, lengthsMm, heightsMm };
}

const reading = (landmarks: Landmarks) => ({ landmarks, carapaceHeight: { kind: 'assumed' } as const, pointingPx: 1 });

describe.each(abdomenTruths().map((truth) => [truth.name, truth] as const))('distances on %s', (_, truth) => {
  const { landmarks, lengthsMm, heightsMm } = truthOf(truth);
  const ticks = ruleTicksOn(truth);
  if (!ticks) throw new Error(`Expected a rule on ${truth.name}`);

  it('come out to the digits of the truth by the outline of the rule, with the true heights', () => {
    const exact = measure(reading(landmarks), calibrationOf(truth, rectangleOn(truth).marks), { heightsMm });
    expect(lengthsMm.size).toBeGreaterThanOrEqual(2);
    for (const [distance, lengthMm] of lengthsMm) {
      // The truth rounds pixels to 0.001 and lengths to 0.0001 mm.
      expect(Math.abs(quantityOf(exact, `free-${distance}`).estimate.value - lengthMm)).toBeLessThan(0.002);
    }
  });

  it.each(['outline', 'ticks'] as const)(
    'lie within U (k = 2) of the truth by the %s of the rule, the height of the skin assumed',
    (by) => {
      const measured = measure(reading(landmarks), calibrationOf(truth, by === 'outline' ? rectangleOn(truth).marks : ticks));
      for (const [distance, lengthMm] of lengthsMm) {
        const { value, expandedUncertainty } = quantityOf(measured, `free-${distance}`).estimate;
        expect(Math.abs(value - lengthMm), `${distance}: ${value} for ${lengthMm}`).toBeLessThan(expandedUncertainty);
        expect(expandedUncertainty).toBeLessThan(0.15 * lengthMm + 0.6);
      }
    },
  );
});

describe('a reading of an opened abdomen', () => {
  const [truth] = abdomenTruths();
  if (!truth) throw new Error('Expected a photo of an abdomen');
  const calibration = calibrationOf(truth, rectangleOn(truth).marks);
  const { landmarks } = truthOf(truth);

  it('tells of the distances that were begun, and of no others', () => {
    const { quantities, absent } = measure(
      reading({ ...landmarks, 'free-own-from': { state: 'placed', at: { xPx: 5, yPx: 5 } } }),
      calibration,
    );
    expect(quantities.map(({ name }) => name)).toEqual([
      'free-receptacle-width',
      'free-receptacle-height',
      'free-book-lungs',
      'free-furrow',
    ]);
    expect(absent.filter(({ name }) => name.startsWith('free-'))).toEqual([{ name: 'free-own', reason: 'not-placed' }]);
    expect(measure(reading({}), calibration).absent.some(({ name }) => name.startsWith('free-'))).toBe(false);
  });

  it('has a budget that adds up to the uncertainty of each distance', () => {
    for (const { name, estimate } of measure(reading(landmarks), calibration).quantities) {
      const lines = budgetInDetail(name, reading(landmarks), calibration);
      expect(Math.hypot(...lines.map(({ contribution }) => contribution))).toBeCloseTo(estimate.standardUncertainty, 9);
    }
  });

  it('combines passes, keeps distances of the keeper apart by their names, and leaves out one without length', () => {
    const own = (called: string, xPx: number): Landmarks => ({
      ...landmarks,
      'free-own-from': { state: 'placed', at: { xPx: 700, yPx: 900 }, called },
      'free-own-to': { state: 'placed', at: { xPx, yPx: 900 } },
    });
    const pass = (marks: Landmarks, photoId: string) => ({ photoId, landmarks: marks, measurement: measure(reading(marks), calibration) });
    const distances = abdomenDistancesOf([
      pass(own('left lobe', 740), 'a'),
      pass(own('right lobe', 730), 'b'),
      pass(own('none', 700), 'b'),
    ]);
    expect(distances.filter(({ distance }) => distance === 'own').map(({ called, photoIds }) => [called, photoIds])).toEqual([
      ['left lobe', ['a']],
      ['right lobe', ['b']],
    ]);
    const lungs = distances.find(({ distance }) => distance === 'book-lungs');
    expect(lungs?.photoIds).toEqual(['a', 'b']);
    const alone = quantityOf(measure(reading(landmarks), calibration), 'free-book-lungs').estimate;
    expect(lungs?.estimate.value).toBeCloseTo(alone.value, 9);
    expect(lungs?.estimate.standardUncertainty).toBeLessThan(alone.standardUncertainty);
  });
});
