import { describe, expect, it } from 'vitest';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import { howWellKnown } from '../../../src/domain/measuring/howWellKnown.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { meanOf, type RandomSource, randomSource, standardDeviationOf } from '../../support/random.ts';
import { calibrated, cardSeenBy } from '../../support/simulatedCard.ts';

const ROUNDS = 2_000;
const POINTING_PX = 0.5;

function jittered(marks: RectangleScale, random: RandomSource): RectangleScale {
  const [a, b, c, d] = marks.corners.map(({ xPx, yPx }) => ({
    xPx: xPx + random.normal(POINTING_PX),
    yPx: yPx + random.normal(POINTING_PX),
  }));
  if (!a || !b || !c || !d) throw new TypeError('Expected four corners');
  return { ...marks, corners: [a, b, c, d] };
}

/** What is stated of a card seen at this tilt, and what comes out of it when its corners are marked again and again. */
function seenAt(tiltDeg: number) {
  const { see, picture } = pinhole({ ...FIXTURE_A, tiltDeg });
  const marks = cardSeenBy({ see }, { pointingPx: POINTING_PX, widthStandardUncertaintyMm: 0, heightStandardUncertaintyMm: 0 });
  const calibration = calibrated(marks, picture);
  // This camera draws straight lines straight, and its focal length is what the picture says.
  const excursions = calibration.excursions.filter(({ source }) => source !== 'distortion' && source !== 'camera-distance');
  const stated = howWellKnown({ ...calibration, excursions }, picture);
  const random = randomSource(11);
  const drawn = Array.from({ length: ROUNDS }, () => calibrated(jittered(marks, random), picture));
  return { stated, drawn };
}

const numbers = (values: readonly (number | null | undefined)[]): number[] => values.map((value) => value ?? Number.NaN);

describe('what a card tells of the picture', () => {
  it('scatters as is stated: scale, height of the camera, tilt', () => {
    const { stated, drawn } = seenAt(15);
    const scatter = {
      pixel: standardDeviationOf(numbers(drawn.map(({ mmPerPxAtCenter }) => mmPerPxAtCenter))),
      height: standardDeviationOf(numbers(drawn.map(({ station }) => station?.heightMm))),
      tilt: standardDeviationOf(numbers(drawn.map(({ tiltDeg }) => tiltDeg))),
    };
    expect((stated.mmPerPxAtCenter?.standardUncertainty ?? 0) / scatter.pixel).toBeGreaterThan(0.93);
    expect((stated.mmPerPxAtCenter?.standardUncertainty ?? 0) / scatter.pixel).toBeLessThan(1.07);
    expect((stated.cameraHeightMm?.standardUncertainty ?? 0) / scatter.height).toBeGreaterThan(0.93);
    expect((stated.cameraHeightMm?.standardUncertainty ?? 0) / scatter.height).toBeLessThan(1.07);
    // Stated for the direction in which the axis is known least: never less than along the tilt.
    expect((stated.tiltDeg?.standardUncertainty ?? 0) / scatter.tilt).toBeGreaterThan(0.95);
    expect((stated.tiltDeg?.standardUncertainty ?? 0) / scatter.tilt).toBeLessThan(1.8);
    expect(stated.tiltDeg?.value).toBeCloseTo(15, 6);
  });

  it('states an uncertainty of the tilt from straight above too, where a tilt is never negative', () => {
    const { stated, drawn } = seenAt(0);
    const rms = Math.sqrt(meanOf(numbers(drawn.map(({ tiltDeg }) => (tiltDeg ?? Number.NaN) ** 2))));
    const one = stated.tiltDeg?.standardUncertainty ?? 0;
    // The squares of two directions, of which the least known is stated.
    expect(rms / one).toBeGreaterThan(0.97);
    expect(rms / one).toBeLessThan(1.05 * Math.SQRT2);
  });

  it('is unknown of a picture that was cut: its middle is not that of the lens', () => {
    const { see, picture } = pinhole({ ...FIXTURE_A, tiltDeg: 25 });
    const whole = cardSeenBy({ see }, { pointingPx: POINTING_PX });
    expect(howWellKnown(calibrated(whole, picture), picture).tiltDeg?.value).toBeCloseTo(25, 6);
    const moved = whole.corners.map(({ xPx, yPx }) => ({ xPx: xPx + 900, yPx: yPx + 700 }));
    const [a, b, c, d] = moved;
    if (!a || !b || !c || !d) throw new TypeError('Expected four corners');
    const cut = { ...picture, widthPx: picture.widthPx + 900, heightPx: picture.heightPx + 700 };
    const calibration = calibrated({ ...whole, corners: [a, b, c, d] }, cut);
    expect(calibration.warnings.map(({ code }) => code)).toContain('shape-disagrees');
    expect(howWellKnown(calibration, cut)).toMatchObject({ tiltDeg: null, cameraHeightMm: null });
  });

  it('is unknown where the calibration does not tell it', () => {
    const { picture } = pinhole(FIXTURE_A);
    const calibration = calibrated(
      {
        kind: 'two-points',
        ends: [
          { xPx: 600, yPx: 600 },
          { xPx: 1600, yPx: 600 },
        ],
        distanceMm: 100,
        distanceStandardUncertaintyMm: 0.06,
        pointingPx: 1,
        heightMm: 0,
      },
      picture,
    );
    const known = howWellKnown(calibration, picture);
    expect(known.tiltDeg).toBeNull();
    // 1.4 px on 1000 px, and whatever an unknown tilt may do.
    expect((known.mmPerPxAtCenter?.standardUncertainty ?? 0) / (known.mmPerPxAtCenter?.value ?? 1)).toBeGreaterThan(0.0014);
  });
});
