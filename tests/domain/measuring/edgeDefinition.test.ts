import { describe, expect, test } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { TwoPointScale } from '../../../src/domain/measuring/calibration.ts';
import { edgeDefinitionPx } from '../../../src/domain/measuring/edgeDefinition.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { unwrap } from '../../../src/domain/result.ts';

/** A carapace 17 mm long beside 100 mm of a rule, in a picture `finer` times as fine as one of 2016 x 1512. */
function seen(finer: number, found: boolean) {
  const at = (xPx: number, yPx: number) => ({ xPx: finer * xPx, yPx: finer * yPx });
  const placed = (xPx: number, yPx: number) => ({
    state: 'placed' as const,
    at: at(xPx, yPx),
    // The light of an edge falls over the same few pixels in any picture.
    ...(found ? { pointingPx: 0.3 } : {}),
  });
  const landmarks: Landmarks = { 'carapace-front': placed(1000, 700), 'carapace-rear': placed(1085, 700) };
  const scale: TwoPointScale = {
    kind: 'two-points',
    ends: [at(800, 900), at(1300, 900)],
    distanceMm: 100,
    distanceStandardUncertaintyMm: 0,
    pointingPx: 0.1,
    heightMm: 0,
  };
  const picture = { widthPx: finer * 2016, heightPx: finer * 1512, facts: { focalLength35Mm: 26 } };
  const { quantities } = measure({ landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5 }, unwrap(calibrate(scale, picture)));
  const length = quantities.find(({ name }) => name === 'carapace-length');
  return length?.budget.find(({ source }) => source === 'pointing')?.standardUncertainty ?? Number.NaN;
}

describe('what a definition leaves open of a point on an edge', () => {
  test('is a length on the skin: a picture with four times as many pixels across makes it no smaller in millimeters', () => {
    const [coarse, fine] = [seen(1, true), seen(4, true)];
    expect(fine / coarse).toBeGreaterThan(0.95);
    expect(fine / coarse).toBeLessThan(1.01);
    // Both ends, each known to 2.1 % of the length along it.
    expect(coarse).toBeCloseTo(Math.SQRT2 * Math.hypot(0.021 * 17, 0.3 / 5), 1);
  });

  test('while a hand that errs by so many pixels errs by less in a finer picture', () => {
    expect(seen(4, false) / seen(1, false)).toBeCloseTo(1 / 4, 2);
  });

  test('follows from the width, or from any two points, where the length is not seen', () => {
    const side = (xPx: number) => ({ state: 'placed' as const, at: { xPx, yPx: 0 } });
    expect(edgeDefinitionPx({ 'carapace-left': side(0), 'carapace-right': side(100) })).toBeCloseTo(0.021 * 110, 9);
    expect(edgeDefinitionPx({ 'carapace-left': side(0), 'leg-L1-tarsus-tip': side(400) })).toBeCloseTo(0.021 * 800, 9);
    expect(edgeDefinitionPx({})).toBe(0);
  });
});
