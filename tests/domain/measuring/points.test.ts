import { describe, expect, test } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { PointsScale } from '../../../src/domain/measuring/calibration.ts';
import { viewOfPoints } from '../../../src/domain/measuring/pointsView.ts';
import { planePointOf } from '../../../src/domain/measuring/view.ts';
import { contribution } from '../../../src/domain/numerics/propagation.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { randomSource } from '../../support/random.ts';

const CAMERA = pinhole(FIXTURE_A);
const EXACT = { xFactor: 1, yFactor: 1, relativeStandardUncertainty: 0 };

/** A grid 6 x 4 with steps of 17 mm before the camera of fixture A, each point off by a normal error. */
function grid(errorPx = 0, seed = 1, change: Partial<PointsScale> = {}): PointsScale {
  const random = randomSource(seed);
  return {
    kind: 'points',
    object: 'scale-card',
    points: Array.from({ length: 24 }, (_, index) => {
      const [xMm, yMm] = [17 * (index % 6), 17 * Math.floor(index / 6)];
      const { xPx, yPx } = CAMERA.see(xMm, yMm);
      return { at: { xPx: xPx + random.normal(errorPx), yPx: yPx + random.normal(errorPx) }, xMm, yMm };
    }),
    pointPx: 0.3,
    print: EXACT,
    printCheck: null,
    mirrored: false,
    thicknessMm: 0.1,
    ...change,
  };
}

function lengthMm(marks: PointsScale, from: readonly [number, number], to: readonly [number, number]) {
  const geometry = viewOfPoints(marks, CAMERA.picture);
  if (!geometry.ok) throw new Error(geometry.failure.code);
  const model = ({ imageToPlane }: (typeof geometry.value)['view']): number => {
    const [a, b] = [planePointOf(imageToPlane, CAMERA.see(...from)), planePointOf(imageToPlane, CAMERA.see(...to))];
    return a && b ? Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm) : Number.NaN;
  };
  const variance = geometry.value.excursions.reduce((sum, excursion) => sum + contribution(model, excursion) ** 2, 0);
  return { value: model(geometry.value.view), uncertainty: Math.sqrt(variance), excursions: geometry.value.excursions };
}

describe('a calibration on many points', () => {
  test('tells tilt, height and residual of the camera that saw them', () => {
    const calibration = calibrate(grid(), CAMERA.picture);
    if (!calibration.ok) throw new Error(calibration.failure.code);
    expect(calibration.value.tiltDeg).toBeCloseTo(15, 6);
    expect(calibration.value.station?.heightMm).toBeCloseTo(289.7777479, 4);
    expect(calibration.value.residualPx).toBeCloseTo(0, 6);
    expect(calibration.value.warnings).toEqual([]);
  });

  test('moves in eight ways and no more, which foretell the scatter of a length beside the card', () => {
    const stated = lengthMm(grid(0.3), [110, 20], [160, 25]);
    expect(stated.excursions.filter(({ source }) => source === 'calibration')).toHaveLength(8);
    const lengths = Array.from({ length: 400 }, (_, index) => lengthMm(grid(0.3, index + 1), [110, 20], [160, 25]).value);
    const truth = Math.hypot(50, 5);
    const scatter = Math.sqrt(lengths.reduce((sum, value) => sum + (value - truth) ** 2, 0) / lengths.length);
    const foretold = lengthMm(grid(), [110, 20], [160, 25]).uncertainty;
    expect(Math.abs(scatter / foretold - 1)).toBeLessThan(0.12);
  });

  test('takes the scatter of the points when that is more than was stated, and says so', () => {
    const calm = lengthMm(grid(0), [0, 0], [60, 0]).uncertainty;
    expect(lengthMm(grid(1.5), [0, 0], [60, 0]).uncertainty / calm).toBeGreaterThan(3.5);
    const calibration = calibrate(grid(1.5), CAMERA.picture);
    expect(calibration.ok && calibration.value.warnings.map(({ code }) => code)).toEqual(['points-scatter']);
  });

  test('tells a scatter that no finding of points makes, whatever is stated of them, and takes it for no lens', () => {
    // Older marks state the scatter itself.
    for (const pointPx of [0.04, 1.5]) {
      const scattered = calibrate(grid(1.5, 1, { pointPx }), CAMERA.picture);
      if (!scattered.ok) throw new Error(scattered.failure.code);
      expect(scattered.value.warnings.map(({ code }) => code)).toContain('points-scatter');
      expect(scattered.value.lens.reason).toBe('uneven');
    }
    const noisy = calibrate(grid(0.2, 1, { pointPx: 0.04 }), CAMERA.picture);
    expect(noisy.ok && [noisy.value.warnings, noisy.value.lens.reason]).toEqual([[], 'not-significant']);
  });

  test('multiplies by the factors of the printer, each way its own, with their uncertainty', () => {
    const print = { xFactor: 0.97, yFactor: 1.02, relativeStandardUncertainty: 0.002 };
    const along = lengthMm(grid(0, 1, { print }), [10, 20], [60, 20]);
    const across = lengthMm(grid(0, 1, { print }), [20, 5], [20, 45]);
    expect(along.value).toBeCloseTo(48.5, 6);
    expect(across.value).toBeCloseTo(40.8, 6);
    expect(along.uncertainty).toBeGreaterThan(0.002 * 48.5);
    expect(along.uncertainty).toBeLessThan(1.2 * 0.002 * 48.5);
  });

  test('warns of a printer that was never checked', () => {
    const print = { ...EXACT, relativeStandardUncertainty: 0.02 / Math.sqrt(3) };
    const calibration = calibrate(grid(0, 1, { print }), CAMERA.picture);
    expect(calibration.ok && calibration.value.warnings.map(({ code }) => code)).toEqual(['scale-object-coarse']);
  });

  test('refuses points on a line, and a picture that was mirrored', () => {
    const line = grid().points.slice(0, 6);
    expect(calibrate(grid(0, 1, { points: line }), CAMERA.picture)).toEqual({ ok: false, failure: { code: 'points-on-a-line' } });
    const mirrored = grid().points.map(({ at, ...place }) => ({ ...place, at: { xPx: 4032 - at.xPx, yPx: at.yPx } }));
    expect(calibrate(grid(0, 1, { points: mirrored }), CAMERA.picture)).toEqual({ ok: false, failure: { code: 'corners-mirrored' } });
  });

  test('tells a picture that was cropped by the shape of the card, and keeps silent about a whole one', () => {
    const tilted = pinhole({ ...FIXTURE_A, tiltDeg: 20 });
    const seenBy = (seed: number, leftPx: number, topPx: number): PointsScale => {
      const random = randomSource(seed);
      const points = grid().points.map(({ xMm, yMm }) => {
        const { xPx, yPx } = tilted.see(xMm, yMm);
        return { at: { xPx: xPx - leftPx + random.normal(0.05), yPx: yPx - topPx + random.normal(0.05) }, xMm, yMm };
      });
      return grid(0, 1, { points, pointPx: 0.05 });
    };
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
      const whole = calibrate(seenBy(seed, 0, 0), tilted.picture);
      expect(whole.ok && whole.value.warnings).toEqual([]);
      expect(whole.ok && whole.value.tiltDeg).toBeCloseTo(20, 0);
    }
    // What stands right of and below a quarter of the picture; the focal length that it tells is that of the whole.
    const cropped = calibrate(seenBy(1, 1008, 756), { ...tilted.picture, widthPx: 3024, heightPx: 2268 });
    if (!cropped.ok) throw new Error(cropped.failure.code);
    expect(cropped.value.tiltDeg).toBeLessThan(17);
    expect(cropped.value.warnings.map(({ code }) => code)).toContain('shape-disagrees');
  });

  test('without a focal length has no station, and says so', () => {
    const calibration = calibrate(grid(), { ...CAMERA.picture, facts: { focalLength35Mm: null } });
    expect(calibration.ok && [calibration.value.station, calibration.value.tiltDeg, calibration.value.residualPx]).toEqual([
      null,
      null,
      null,
    ]);
    expect(calibration.ok && calibration.value.warnings.map(({ code }) => code)).toEqual(['focal-length-unknown']);
  });
});
