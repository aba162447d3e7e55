import { describe, expect, it } from 'vitest';
import { carapaceLengthOf, measureReadings, skinReadingsOf } from '../../../src/api/views/measurements.ts';
import { pointingFrom, scattersOf } from '../../../src/domain/agreement/pointing.ts';
import { sizesOf } from '../../../src/domain/growth/skinSizes.ts';
import type { CalibrationRecord, ScaleMarks, TwoPointScale } from '../../../src/domain/measuring/calibration.ts';
import { legLandmark } from '../../../src/domain/measuring/landmarks.ts';
import type { Reading } from '../../../src/domain/measuring/reading.ts';
import type { Photo } from '../../../src/domain/photo/photo.ts';
import { cardMarks, readingDraft } from '../../contract/drafts.ts';
import { newPhoto } from '../../support/testArchive.ts';

const photo: Photo = { ...newPhoto({ widthPx: 320, heightPx: 240 }), id: 'p', version: 1, importedAt: '2026-01-01T00:00:00.000Z' };
const calibration: CalibrationRecord = { photoId: 'p', marks: cardMarks, version: 1, changedAt: '2026-01-01T00:00:00.000Z' };

const ALONG_THE_CARD: Omit<TwoPointScale, 'ends' | 'distanceMm'> = {
  kind: 'two-points',
  distanceStandardUncertaintyMm: 0.1,
  pointingPx: 1,
  heightMm: 0,
};

function reading(id: string, shiftPx: number): Reading {
  const { landmarks } = readingDraft;
  const moved = Object.fromEntries(
    Object.entries(landmarks).map(([name, landmark]) => [
      name,
      'at' in landmark ? { ...landmark, at: { xPx: landmark.at.xPx + shiftPx, yPx: landmark.at.yPx - shiftPx } } : landmark,
    ]),
  );
  const leg = {
    [legLandmark('L1', 'trochanter-femur')]: { state: 'placed', at: { xPx: 215, yPx: 60 } },
    [legLandmark('L1', 'femur-patella')]: { state: 'placed', at: { xPx: 200, yPx: 50 } },
  };
  const at = '2026-01-01T00:00:00.000Z';
  return { ...readingDraft, landmarks: { ...moved, ...leg }, id, photoId: 'p', version: 1, createdAt: at, changedAt: at };
}

/** The carapace one pixel longer. */
function longer({ landmarks }: Reading): Reading['landmarks'] {
  const rear = landmarks['carapace-rear'];
  if (!rear || !('at' in rear)) throw new Error('Expected the rear of the carapace');
  return { ...landmarks, 'carapace-rear': { ...rear, at: { ...rear.at, yPx: rear.at.yPx + 1 } } };
}

/** Enough clicks on the same points, over photos enough, that their scatter tells the pointing. */
const repeated = [reading('a', 0), reading('b', 0.4), reading('c', -0.3)];
const elsewhere = ['q', 'r'].flatMap((photoId) => repeated.map((one) => ({ ...one, photoId })));
const pointing = pointingFrom(scattersOf([...repeated, ...elsewhere]));

describe('the sizes a page is told', () => {
  it('give the carapace alone the same length and uncertainty as everything together, all passes combined', () => {
    for (const readings of [repeated.slice(0, 1), repeated]) {
      const whole = sizesOf(skinReadingsOf('p', measureReadings(photo, calibration, readings, pointing))).carapaceLengthMm;
      expect(whole?.value).toBeGreaterThan(10);
      expect(carapaceLengthOf({ moltId: 'm', photos: [{ photo, calibration, readings }] }, pointing)).toEqual(whole);
    }
  });

  it('combine the passes over all photos of a skin, not the latest alone', () => {
    const [first, second] = [reading('a', 0), { ...reading('b', 0), landmarks: longer(reading('b', 0)) }];
    const of = (readings: Reading[]) =>
      carapaceLengthOf({ moltId: 'm', photos: [{ photo, calibration, readings }] }, pointing)?.value ?? Number.NaN;
    expect(of([second])).toBeGreaterThan(of([first]) + 0.1);
    expect(of([first, second])).toBeGreaterThan(of([first]));
    expect(of([first, second])).toBeLessThan(of([second]));
  });

  it('take the scatter of repeated clicks for the pointing', () => {
    const [alone] = measureReadings(photo, calibration, repeated.slice(0, 1), new Map());
    const [among] = measureReadings(photo, calibration, repeated, pointing);
    const pointingIn = (measured: typeof alone) =>
      measured?.measurement?.quantities[0]?.budget.find(({ source }) => source === 'pointing')?.standardUncertainty ?? 0;
    expect(pointingIn(among)).toBeGreaterThan(0);
    expect(pointingIn(among)).toBeLessThan(pointingIn(alone));
    const [thin] = measureReadings(photo, calibration, repeated, pointingFrom(scattersOf(repeated)));
    expect(pointingIn(thin)).toBe(pointingIn(alone));
  });

  it('take the carapace of the animal itself to stand higher than that of a skin', () => {
    const living: Photo = { ...photo, subject: { kind: 'animal', specimenId: 's' } };
    const of = (shown: Photo) => {
      const [measured] = measureReadings(shown, calibration, repeated.slice(0, 1), new Map());
      const length = measured?.measurement?.quantities.find(({ name }) => name === 'carapace-length');
      const height = length?.budget.find(({ source }) => source === 'height')?.standardUncertainty;
      return { valueMm: length?.estimate.value ?? Number.NaN, byHeightMm: height ?? Number.NaN };
    };
    expect(of(living).valueMm).toBeLessThan(of(photo).valueMm);
    expect(of(living).byHeightMm).toBeGreaterThan(1.3 * of(photo).byHeightMm);
  });

  it('are doubted where the second object of the photo contradicts its scale', () => {
    const [one] = repeated;
    if (!one || cardMarks.kind !== 'rectangle') throw new Error('Expected a reading and a card');
    const [from, to] = cardMarks.corners;
    const along: ScaleMarks = { ...ALONG_THE_CARD, ends: [from, to], distanceMm: cardMarks.widthMm };
    const of = (check: ScaleMarks) =>
      sizesOf(skinReadingsOf('p', measureReadings(photo, { ...calibration, check }, [one], new Map()))).doubted;
    expect(of(along)).toEqual([]);
    expect(of({ ...along, distanceMm: 1.5 * cardMarks.widthMm })).toContain('carapaceLengthMm');
  });

  it('are none without a scale', () => {
    const [one] = repeated;
    if (!one) throw new Error('Expected a reading');
    for (const unscaled of [null, { ...calibration, marks: null }]) {
      expect(measureReadings(photo, unscaled, [one], new Map())).toEqual([
        { reading: one, measurement: null, doubts: [], isScaleDoubted: false },
      ]);
    }
    expect(
      carapaceLengthOf({ moltId: 'm', photos: [{ photo, calibration: { ...calibration, marks: null }, readings: [one] }] }, new Map()),
    ).toBeNull();
  });
});
