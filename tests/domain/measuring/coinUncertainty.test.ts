import { describe, expect, test } from 'vitest';
import { directEllipse } from '../../../src/domain/finding/coin/fitEllipse.ts';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { CoinScale } from '../../../src/domain/measuring/calibration.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { simulateReading } from '../../../src/domain/measuring/simulation.ts';
import { seededGenerator } from '../../../src/domain/numerics/generator.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { quantityOf } from '../../support/trueClicks.ts';

const RADIUS_MM = 12;
const RADIUS_PX = 100;
const RIM_PX = 0.9;
const LENGTH_MM = 20;
const HEIGHTS = { 'carapace-front': 0, 'carapace-rear': 0, 'carapace-left': 0, 'carapace-right': 0 };
const DRAWS = 3_000;

/** A coin of 100 px radius near the middle of the picture, and two lengths of 20 mm about it: along the tilt and across it. */
function scene(tiltDeg: number, coinAt: { readonly xMm: number; readonly yMm: number } = { xMm: 0, yMm: 0 }) {
  const focalPx = 3000;
  const placement = { ...FIXTURE_A, tiltDeg, axisDeg: 0, rollDeg: 0, aim: { xMm: 0, yMm: 0 }, focalPx };
  const { see, picture } = pinhole({ ...placement, distanceMm: (focalPx * RADIUS_MM) / RADIUS_PX });
  const around = Array.from({ length: 60 }, (_, index) =>
    see(coinAt.xMm + RADIUS_MM * Math.cos((index * Math.PI) / 30), coinAt.yMm + RADIUS_MM * Math.sin((index * Math.PI) / 30)),
  );
  const rim = directEllipse(around);
  if (!rim) throw new Error('The rim is no ellipse');
  const marks: CoinScale = {
    kind: 'coin',
    coin: 'own',
    rim,
    rimPx: RIM_PX,
    diameterMm: 2 * RADIUS_MM,
    diameterStandardUncertaintyMm: 0,
    thicknessMm: 0,
    nearEdgeRad: null,
  };
  const half = LENGTH_MM / 2;
  const landmarks: Landmarks = {
    'carapace-front': { state: 'placed', at: see(coinAt.xMm, coinAt.yMm - half) },
    'carapace-rear': { state: 'placed', at: see(coinAt.xMm, coinAt.yMm + half) },
    'carapace-left': { state: 'placed', at: see(coinAt.xMm - half, coinAt.yMm) },
    'carapace-right': { state: 'placed', at: see(coinAt.xMm + half, coinAt.yMm) },
  };
  const reading = { landmarks, carapaceHeight: { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 } as const, pointingPx: 0.01 };
  return { marks, picture, reading, withoutFocalLength: { ...picture, facts: { focalLength35Mm: null } } };
}

describe('a coin without a focal length', () => {
  // JCGM 101:2008: the stated uncertainty of the rim against rims drawn as `rimPx` describes them.
  test.each([0, 20])('states what noise of its rim makes of a length: tilt %i degrees', (tiltDeg) => {
    const { marks, reading, withoutFocalLength } = scene(tiltDeg);
    const calibration = calibrate(marks, withoutFocalLength);
    if (!calibration.ok) throw new Error(calibration.failure.code);
    const { budget } = quantityOf(measure(reading, calibration.value, { heightsMm: HEIGHTS }), 'carapace-width');
    const stated = budget.find(({ source }) => source === 'calibration')?.standardUncertainty ?? 0;
    expect(stated / LENGTH_MM).toBeCloseTo((Math.sqrt(3) * RIM_PX) / RADIUS_PX, 3);
    const drawn = simulateReading(reading, marks, withoutFocalLength, DRAWS, seededGenerator(4));
    if (!drawn.ok) throw new Error(drawn.failure.code);
    const width = drawn.value.get('carapace-width');
    const rms = Math.hypot(width?.standardDeviation ?? Number.NaN, (width?.mean ?? Number.NaN) - LENGTH_MM);
    expect(rms / stated).toBeLessThan(1.1);
    expect(rms / stated).toBeGreaterThan(0.9);
  });
});
