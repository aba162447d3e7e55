import { describe, expect, it } from 'vitest';
import { DORSAL_SKIN_PROTOCOL, type Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { pointingFromRepeats } from '../../../src/domain/measuring/repeats.ts';
import { randomSource } from '../../support/random.ts';

function pass(offset: (index: number) => readonly [number, number]): { landmarks: Landmarks } {
  const landmarks: Landmarks = {};
  DORSAL_SKIN_PROTOCOL.forEach((name, index) => {
    const [x, y] = offset(index);
    landmarks[name] = { state: 'placed', at: { xPx: 100 * index + x, yPx: 50 * index + y } };
  });
  return { landmarks };
}

describe('pointing from repeats', () => {
  it('is the pooled standard deviation: two passes that differ by d give d / sqrt 2 (Dahlberg)', () => {
    const found = pointingFromRepeats([pass(() => [0, 0]), pass(() => [2, -2])]);
    expect(found?.pointingPx).toBeCloseTo(Math.SQRT2, 12);
    expect(found?.degreesOfFreedom).toBe(2 * DORSAL_SKIN_PROTOCOL.length);
  });

  it('recovers the scatter of simulated clicks', () => {
    const random = randomSource(3);
    const scattered = () => pass(() => [random.normal(0.8), random.normal(0.8)]);
    const found = pointingFromRepeats([scattered(), scattered(), scattered(), scattered()]);
    // 312 degrees of freedom: relative standard deviation 4 %.
    expect(Math.abs((found?.pointingPx ?? 0) / 0.8 - 1)).toBeLessThan(0.16);
  });

  it('pools only what was placed twice, and says nothing on too little', () => {
    const partial = (offset: number, placed: number): { landmarks: Landmarks } => ({
      landmarks: Object.fromEntries(Object.entries(pass(() => [offset, 0]).landmarks).slice(0, placed)),
    });
    expect(pointingFromRepeats([partial(0, 4), partial(1, 52)])?.degreesOfFreedom).toBe(8);
    expect(pointingFromRepeats([partial(0, 3), partial(1, 52)])).toBeNull();
    expect(pointingFromRepeats([pass(() => [0, 0])])).toBeNull();
    expect(pointingFromRepeats([])).toBeNull();
  });

  it('says nothing when a pass is a copy of another', () => {
    expect(pointingFromRepeats([pass(() => [0, 0]), pass(() => [0, 0])])).toBeNull();
  });
});
