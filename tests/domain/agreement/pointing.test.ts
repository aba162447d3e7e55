import { describe, expect, test } from 'vitest';
import { pointingFor, pointingFrom, scattersOf } from '../../../src/domain/agreement/pointing.ts';
import { CARAPACE_LANDMARKS, DORSAL_SKIN_PROTOCOL, type Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { knownPointing } from '../../../src/domain/measuring/pointingError.ts';
import { randomSource } from '../../support/random.ts';

const random = randomSource(17);
const pointingByObserver = (passes: Parameters<typeof scattersOf>[0]) => [...pointingFrom(scattersOf(passes)).values()];

/** A pass that points at the front of the carapace with one error and at its rear with another. */
function pass(observer: string, photoId: string, frontPx: number, rearPx: number) {
  const near = (x: number, y: number, by: number) => ({
    state: 'placed' as const,
    at: { xPx: x + random.normal(by), yPx: y + random.normal(by) },
  });
  const landmarks: Landmarks = { 'carapace-front': near(500, 300, frontPx), 'carapace-rear': near(510, 700, rearPx) };
  return { observer, photoId, landmarks };
}

/** A pass over all landmarks, moved right and up. */
function shifted(byPx: number) {
  const landmarks = DORSAL_SKIN_PROTOCOL.map((name, index) => [
    name,
    { state: 'placed' as const, at: { xPx: index + byPx, yPx: index - byPx } },
  ]);
  return { observer: 'A', photoId: 'one', landmarks: Object.fromEntries(landmarks) as Landmarks };
}

const PASSES = ['one', 'two', 'three', 'four'].flatMap((photoId) =>
  Array.from({ length: 30 }, () => pass('A', photoId, 0.5, 2)).concat(Array.from({ length: 3 }, () => pass('B', photoId, 1, 1))),
);

describe('the pooled pointing error', () => {
  test('is that of each observer and each landmark', () => {
    const [first, second] = pointingByObserver(PASSES);
    expect(first?.observer).toBe('A');
    expect(first?.byLandmark.get('carapace-front')?.degreesOfFreedom).toBe(4 * 2 * 29);
    expect(first?.byLandmark.get('carapace-front')?.pointingPx).toBeCloseTo(0.5, 1);
    expect((first?.byLandmark.get('carapace-rear')?.pointingPx ?? 0) / 2).toBeCloseTo(1, 0);
    expect(first?.overall.pointingPx).toBeCloseTo(Math.sqrt((0.25 + 4) / 2), 0);
    expect(second?.byLandmark.get('carapace-front')?.degreesOfFreedom).toBe(16);
  });

  test('replaces what a reading states for a landmark with repeats enough of its own, narrower or wider', () => {
    const [first] = pointingByObserver(PASSES);
    for (const name of ['carapace-front', 'carapace-rear'] as const) {
      expect(pointingFor(name, first, 1.5).pointingPx).toBe(first?.byLandmark.get(name)?.pointingPx);
    }
    expect(pointingFor('carapace-left', undefined, 1.5)).toEqual(knownPointing(1.5));
  });

  test('of other landmarks may widen what a reading states, never narrow it', () => {
    const [first] = pointingByObserver(PASSES);
    expect(pointingFor('carapace-left', first, 1)).toBe(first?.overall);
    expect(pointingFor('carapace-left', first, 5)).toEqual(knownPointing(5));
  });

  test('of four points repeated once on one sharp photo does not narrow what is entered for any photo', () => {
    const sharp = [0, 1, 2, 3].map((index) => ({ xPx: 100 * index, yPx: 50 * index }));
    const passAt = (byPx: number) => ({
      observer: 'A',
      photoId: 'sharp',
      landmarks: Object.fromEntries(
        CARAPACE_LANDMARKS.map((name, index) => {
          const { xPx = 0, yPx = 0 } = sharp[index] ?? {};
          return [name, { state: 'placed' as const, at: { xPx: xPx + byPx, yPx: yPx - byPx } }];
        }),
      ),
    });
    const close = pointingFrom(scattersOf([passAt(0), passAt(0.78)])).get('A');
    expect(close?.overall).toMatchObject({ degreesOfFreedom: 8, photos: 1 });
    expect(close?.overall.pointingPx).toBeLessThan(0.6);
    const apart = pointingFrom(scattersOf([passAt(0), passAt(6)])).get('A');
    for (const name of CARAPACE_LANDMARKS) {
      expect(pointingFor(name, close, 1.5)).toEqual(knownPointing(1.5));
      expect(pointingFor(name, apart, 1.5).pointingPx).toBeCloseTo(6 / Math.SQRT2, 12);
    }
  });

  test('counts from 10 degrees of freedom on at least 3 photos', () => {
    const ownOf = (passesByPhoto: readonly number[]) => {
      const passes = passesByPhoto.flatMap((count, photo) => Array.from({ length: count }, () => pass('A', `${photo}`, 0.5, 0.5)));
      return pointingFor('carapace-front', pointingFrom(scattersOf(passes)).get('A'), 9).degreesOfFreedom;
    };
    expect(ownOf([30])).toBe(Number.POSITIVE_INFINITY);
    expect(ownOf([4, 4])).toBe(Number.POSITIVE_INFINITY);
    expect(ownOf([2, 2, 2, 2])).toBe(Number.POSITIVE_INFINITY);
    expect(ownOf([2, 3, 3])).toBe(10);
    expect(ownOf([2, 2, 2, 2, 2])).toBe(10);
    expect(ownOf([6, 1, 1])).toBe(Number.POSITIVE_INFINITY);
  });

  test('is not told from too few repeats, from passes over different photos, or from copies', () => {
    const one = pass('A', 'one', 1, 1);
    expect(pointingByObserver([one, pass('A', 'one', 1, 1)])).toEqual([]);
    expect(pointingByObserver(Array.from({ length: 9 }, (_, index) => pass('A', `${index}`, 1, 1)))).toEqual([]);
    expect(pointingByObserver(Array.from({ length: 9 }, () => one))).toEqual([]);
  });

  test('of two passes that differ by d is d / sqrt 2 per coordinate (Dahlberg 1940)', () => {
    const [first] = pointingByObserver([shifted(0), shifted(2)]);
    expect(first?.overall.pointingPx).toBeCloseTo(Math.SQRT2, 12);
    expect(first?.overall.degreesOfFreedom).toBe(2 * DORSAL_SKIN_PROTOCOL.length);
  });

  test('is the same from all photos at once and from one photo and the others apart', () => {
    const here = PASSES.filter(({ photoId }) => photoId === 'one');
    const elsewhere = PASSES.filter(({ photoId }) => photoId !== 'one');
    const apart = pointingFrom([...scattersOf(elsewhere), ...scattersOf(here)]).get('A');
    const whole = pointingFrom(scattersOf(PASSES)).get('A');
    expect(apart?.overall.degreesOfFreedom).toBe(whole?.overall.degreesOfFreedom);
    expect([apart?.overall.photos, whole?.overall.photos]).toEqual([4, 4]);
    expect(apart?.byLandmark.get('carapace-rear')?.pointingPx).toBeCloseTo(whole?.byLandmark.get('carapace-rear')?.pointingPx ?? 0, 12);
  });

  test('leaves points out that were found on an edge', () => {
    const onEdge = PASSES.map((one) => ({
      ...one,
      landmarks: { 'carapace-front': { state: 'placed' as const, at: { xPx: random.normal(9), yPx: 0 }, pointingPx: 0.5 } },
    }));
    expect(pointingByObserver(onEdge)).toEqual([]);
  });
});
