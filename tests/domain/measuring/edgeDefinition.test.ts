import { describe, expect, test } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { TwoPointScale } from '../../../src/domain/measuring/calibration.ts';
import { edgeDefinitionPx, pointOnEdgePx } from '../../../src/domain/measuring/edgeDefinition.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { unwrap } from '../../../src/domain/result.ts';

/** Of a carapace so long in the picture: what pointing makes uncertain of its length, px. 100 mm are 500 px. */
function pointingPart(lengthPx: number, edgePx: number | null, handPx = 1.5): number {
  const placed = (xPx: number) => ({
    state: 'placed' as const,
    at: { xPx, yPx: 700 },
    ...(edgePx === null ? {} : { pointingPx: edgePx }),
  });
  const landmarks: Landmarks = { 'carapace-front': placed(1000), 'carapace-rear': placed(1000 + lengthPx) };
  const scale: TwoPointScale = {
    kind: 'two-points',
    ends: [
      { xPx: 800, yPx: 900 },
      { xPx: 1300, yPx: 900 },
    ],
    distanceMm: 100,
    distanceStandardUncertaintyMm: 0,
    pointingPx: 0.1,
    heightMm: 0,
  };
  const picture = { widthPx: 2016, heightPx: 1512, facts: { focalLength35Mm: 26 } };
  const reading = { landmarks, carapaceHeight: { kind: 'assumed' as const }, pointingPx: handPx };
  const length = measure(reading, unwrap(calibrate(scale, picture))).quantities.find(({ name }) => name === 'carapace-length');
  return 5 * (length?.budget.find(({ source }) => source === 'pointing')?.standardUncertainty ?? Number.NaN);
}

describe('a point on an edge', () => {
  test('is as uncertain in pixels on a large carapace as on a small one', () => {
    // Both ends.
    const expected = Math.SQRT2 * Math.hypot(0.3, 1.35);
    for (const lengthPx of [50, 400]) expect(Math.abs(pointingPart(lengthPx, 0.3) / expected - 1)).toBeLessThan(0.1);
  });

  test.each([50, 85, 150, 400, 600])('of a carapace %i px long leaves its length less uncertain than the hand alone', (lengthPx) => {
    expect(pointingPart(lengthPx, 0.3)).toBeLessThan(pointingPart(lengthPx, null));
  });

  test('still has most of the error of a hand that points badly', () => {
    expect(pointOnEdgePx(0.3, 4)).toBeCloseTo(Math.hypot(0.3, 3.6), 9);
    expect(pointingPart(400, 0.3, 4)).toBeGreaterThan(2 * pointingPart(400, 0.3));
  });

  test('is known no better than its definition, however well the hand points', () => {
    expect(edgeDefinitionPx(0.2)).toBe(1);
    expect(edgeDefinitionPx(0)).toBe(1);
  });
});
