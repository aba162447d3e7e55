import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { RuleTicksScale } from '../../../src/domain/measuring/calibration.ts';
import { viewOfRule } from '../../../src/domain/measuring/ruleView.ts';
import { lengthByScale } from '../../../src/domain/measuring/twoScales.ts';
import { planePointOf } from '../../../src/domain/measuring/view.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { FIXTURE_A, type Pinhole, pinhole } from '../../support/pinhole.ts';
import { randomSource, standardDeviationOf } from '../../support/random.ts';

/** Ticks every millimeter along the plane's x axis, 4 mm long, found with a normal error. */
function ticksSeenBy({ see }: Pinhole, fromMm: number, toMm: number, noisePx = 0, seed = 1): RuleTicksScale {
  const chance = randomSource(seed);
  const at = (xMm: number, yMm: number) => {
    const { xPx, yPx } = see(xMm, yMm);
    return { xPx: xPx + chance.normal(noisePx), yPx: yPx + chance.normal(noisePx) };
  };
  return {
    kind: 'rule-ticks',
    ends: [see(fromMm, 2), see(toMm, 2)],
    graduationMm: 1,
    spanStandardUncertaintyMm: 0,
    ticks: Array.from({ length: toMm - fromMm + 1 }, (_, number) => ({ number, from: at(fromMm + number, 0), to: at(fromMm + number, 4) })),
    tickPx: Math.max(noisePx, 0.02),
    heightMm: 0,
  };
}

describe('the plane of a rule', () => {
  it('follows from the spacing and the fanning of its ticks, whatever the direction of the tilt', () => {
    for (const axisDeg of [0, 30, 90, 140]) {
      const camera = pinhole({ ...FIXTURE_A, axisDeg });
      const calibration = unwrap(calibrate(ticksSeenBy(camera, -10, 90), camera.picture));
      expect(calibration.tiltDeg, `axis ${axisDeg}`).toBeCloseTo(15, 1);
      // The mean of no slope beforehand pulls a little.
      expect(Math.abs((calibration.station?.heightMm ?? 0) / (300 * Math.cos(Math.PI / 12)) - 1)).toBeLessThan(2e-3);
      const [one, other] = [camera.see(20, -60), camera.see(70, -20)].map((at) => planePointOf(calibration.view.imageToPlane, at));
      if (!one || !other) throw new Error('Expected points of the plane');
      expect(Math.hypot(other.xMm - one.xMm, other.yMm - one.yMm) / Math.hypot(50, 40)).toBeCloseTo(1, 3);
      expect(calibration.residualPx).toBeLessThan(0.02);
    }
  });

  it('has its tilt along the rule and across it told apart, the latter less certain', () => {
    // Turned about the rule's own direction, then about the one across it.
    for (const [axisDeg, along, across] of [
      [0, 0, 15],
      [90, 15, 0],
    ] as const) {
      const camera = pinhole({ ...FIXTURE_A, axisDeg, rollDeg: 0 });
      const view = unwrap(viewOfRule(ticksSeenBy(camera, -10, 90, 0.1), camera.picture));
      expect(Math.abs(Math.abs(view.along.tiltDeg) - along)).toBeLessThan(1);
      expect(Math.abs(Math.abs(view.across.tiltDeg) - across)).toBeLessThan(1);
      expect(view.across.uncertaintyDeg).toBeGreaterThan(view.along.uncertaintyDeg);
    }
  });

  it('tells both parts of its tilt with the calibration, and neither without a focal length', () => {
    const camera = pinhole({ ...FIXTURE_A, axisDeg: 90, rollDeg: 0 });
    const { picture } = camera;
    const marks = ticksSeenBy(camera, -10, 90, 0.1);
    const { ruleTilt } = unwrap(calibrate(marks, picture));
    expect(Math.abs(Math.abs(ruleTilt?.along.tiltDeg ?? 0) - 15)).toBeLessThan(1);
    expect(Math.abs(ruleTilt?.across.tiltDeg ?? 90)).toBeLessThan(1);
    expect(unwrap(calibrate(marks, { ...picture, facts: { ...picture.facts, focalLength35Mm: null } })).ruleTilt).toBeUndefined();
  });

  it('of a picture that does not tell its focal length is as uncertain as any lens in use leaves it', () => {
    // 35 mm equivalents from wide main cameras to short telephotos; the stand-in has 26.
    for (const focal35Mm of [20, 24, 28, 35, 52]) {
      for (const tiltDeg of [0, 10, 20]) {
        for (const axisDeg of [0, 90]) {
          const focalPx = (focal35Mm * Math.hypot(4032, 3024)) / Math.hypot(36, 24);
          const camera = pinhole({ ...FIXTURE_A, tiltDeg, axisDeg, focalPx, distanceMm: 11.5 * focal35Mm });
          const picture = { ...camera.picture, facts: { focalLength35Mm: null } };
          const calibration = unwrap(calibrate(ticksSeenBy(camera, -7, 93), picture));
          const seen = lengthByScale(calibration, [[camera.see(43, 5), camera.see(43, 55)]], 0);
          if (seen === null) throw new Error('Expected a length');
          const uncertaintyMm = Math.sqrt(seen.ownVariance + seen.focalMm ** 2);
          expect(Math.abs(seen.valueMm - 50), `${focal35Mm} mm, ${tiltDeg} degrees about ${axisDeg}`).toBeLessThan(
            2 * uncertaintyMm + 0.01,
          );
        }
      }
    }
  });

  it('is as uncertain as it says: tilts scatter over repeated noise as stated', () => {
    const camera = pinhole(FIXTURE_A);
    const seen = Array.from({ length: 40 }, (_, seed) => unwrap(viewOfRule(ticksSeenBy(camera, -10, 90, 0.3, seed), camera.picture)));
    const stated = seen.reduce((sum, { tiltUncertaintyDeg }) => sum + tiltUncertaintyDeg, 0) / seen.length;
    const shown = standardDeviationOf(seen.map(({ tiltDeg }) => tiltDeg));
    expect(shown).toBeLessThan(1.3 * stated);
    expect(shown).toBeGreaterThan(0.2 * stated);
  });

  it('stays unknown across a few short ticks, and the calibration says so', () => {
    const camera = pinhole(FIXTURE_A);
    const calibration = unwrap(calibrate(ticksSeenBy(camera, 40, 52, 0.3), camera.picture));
    expect(calibration.warnings).toContainEqual({ code: 'tilt-unknown', by: 'rule-ticks' });
    expect(calibration.excursions.some(({ source }) => source === 'tilt-unknown')).toBe(true);
  });

  it('can not be told where all ticks fall on one spot', () => {
    const camera = pinhole(FIXTURE_A);
    const marks = ticksSeenBy(camera, 0, 20);
    const [first] = marks.ticks;
    if (!first) throw new Error('Expected a tick');
    const stacked = { ...marks, ticks: marks.ticks.map(({ number }) => ({ ...first, number })) };
    expect(calibrate(stacked, camera.picture)).toMatchObject({ ok: false, failure: { code: 'scale-points-coincide' } });
  });
});
