import { describe, expect, test } from 'vitest';
import type { ObserverPointing, PooledPointing } from '../../../../src/domain/agreement/pointing.ts';
import { CARAPACE_LANDMARKS } from '../../../../src/domain/measuring/landmarks.ts';
import { pointingInWords } from '../../../../src/renderer/pages/bench/landmarks/pointingInWords.ts';

const thin: PooledPointing = { pointingPx: 0.55, degreesOfFreedom: 8, photos: 1 };
const good: PooledPointing = { pointingPx: 0.55, degreesOfFreedom: 12, photos: 3 };
const [front, rear, left, right] = CARAPACE_LANDMARKS;
const words = (overall: PooledPointing, own: ObserverPointing['byLandmark'] = new Map(), enteredPx = 1.5) =>
  pointingInWords(CARAPACE_LANDMARKS, { observer: 'A', overall, byLandmark: own }, enteredPx);

describe('the figure that counts for the points', () => {
  test('is the entered one while nothing was repeated', () => {
    expect(pointingInWords(CARAPACE_LANDMARKS, undefined, 1.5)).toContain('This figure counts');
  });

  test('is the entered one while repeats are few, with what they show', () => {
    expect(words(thin)).toBe(
      'Your repeated passes agree to ± 1.1 px, on 1 photo. Too few repeats to narrow the ± 3 px entered here, so it counts.',
    );
  });

  test('is that of few repeats where it is the wider', () => {
    expect(words(thin, new Map(), 0.4)).toMatch(
      /^Your repeated passes agree to ± 1.1 px, on 1 photo\. The repeats are wider.*they count\.$/,
    );
    expect(words(thin, new Map([[front, { ...thin, pointingPx: 2 }]]))).toMatch(
      /so it counts\. For 1 point the repeats are wider, and they count\.$/,
    );
  });

  test('is that of each point with repeats enough, the entered one for the others', () => {
    expect(words(good, new Map([[front, good]]))).toMatch(/1 point has enough repeats.*For the other points there are too few repeats/);
    const all = [front, rear, left, right].map((name) => [name, good] as const);
    expect(words(good, new Map(all))).toMatch(/Every point has repeats enough of its own/);
  });
});
