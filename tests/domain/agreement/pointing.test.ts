import { describe, expect, test } from 'vitest';
import { pointingByObserver, pointingFor } from '../../../src/domain/agreement/pointing.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { randomSource } from '../../support/random.ts';

const random = randomSource(17);

/** A pass that points at the front of the carapace with one error and at its rear with another. */
function pass(observer: string, photoId: string, frontPx: number, rearPx: number) {
  const near = (x: number, y: number, by: number) => ({
    state: 'placed' as const,
    at: { xPx: x + random.normal(by), yPx: y + random.normal(by) },
  });
  const landmarks: Landmarks = { 'carapace-front': near(500, 300, frontPx), 'carapace-rear': near(510, 700, rearPx) };
  return { observer, photoId, landmarks };
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

  test('replaces what a reading states: its own, then that over all landmarks, then the stated', () => {
    const [first] = pointingByObserver(PASSES);
    expect(pointingFor('carapace-front', first, 1.5)).toBe(first?.byLandmark.get('carapace-front')?.pointingPx);
    expect(pointingFor('carapace-left', first, 1.5)).toBe(first?.overall.pointingPx);
    expect(pointingFor('carapace-left', undefined, 1.5)).toBe(1.5);
  });

  test('is not told from too few repeats, from passes over different photos, or from copies', () => {
    const one = pass('A', 'one', 1, 1);
    expect(pointingByObserver([one, pass('A', 'one', 1, 1)])).toEqual([]);
    expect(pointingByObserver(Array.from({ length: 9 }, (_, index) => pass('A', `${index}`, 1, 1)))).toEqual([]);
    expect(pointingByObserver(Array.from({ length: 9 }, () => one))).toEqual([]);
  });
});
