import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { EdgePoint, TwoPointScale } from '../../../src/domain/measuring/calibration.ts';
import type { CalibrationWarning } from '../../../src/domain/measuring/calibrationWarning.ts';
import { KNOWN_RECTANGLES } from '../../../src/domain/measuring/knownRectangles.ts';
import { isFarFromScale, toPlane } from '../../../src/domain/measuring/onPlane.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { calibrated, cardSeenBy } from '../../support/simulatedCard.ts';

const CAMERA = pinhole(FIXTURE_A);
const SILENT = { ...CAMERA.picture, facts: { focalLength35Mm: null } };

const RULE: TwoPointScale = {
  kind: 'two-points',
  ends: [
    { xPx: 1000, yPx: 1512 },
    { xPx: 3000, yPx: 1512 },
  ],
  distanceMm: 100,
  distanceStandardUncertaintyMm: 0.087,
  pointingPx: 1,
  heightMm: 0.5,
};

function codes(warnings: readonly CalibrationWarning[]): readonly string[] {
  return warnings.map((warning) => warning.code);
}

describe('calibrating on a card', () => {
  const calibration = calibrated(cardSeenBy(CAMERA, { thicknessMm: 0.76 }), CAMERA.picture);

  it('tells tilt, camera height, scale and a residual of nothing for true corners', () => {
    expect(calibration.tiltDeg).toBeCloseTo(15, 6);
    expect(calibration.station?.heightMm).toBeCloseTo(289.7777, 3);
    // At the middle of the picture 300 mm away: 0.1 mm per px across the tilt, 0.1 / cos 15 along it; the root of their product.
    expect(calibration.mmPerPxAtCenter).toBeCloseTo(0.1 / Math.sqrt(Math.cos(Math.PI / 12)), 9);
    expect(calibration.residualPx).toBeLessThan(1e-6);
    expect(calibration.faceHeightMm).toBe(0.76);
    expect(calibration.warnings).toEqual([]);
  });

  it('goes from the picture to the plane', () => {
    const point = toPlane(calibration, CAMERA.see(120, -30));
    expect(point?.xMm).toBeCloseTo(120, 8);
    expect(point?.yMm).toBeCloseTo(-30, 8);
  });

  it('says no tilt, camera or residual when the picture does not tell its focal length', () => {
    const silent = calibrated(cardSeenBy(CAMERA), SILENT);
    expect([silent.tiltDeg, silent.station, silent.residualPx]).toEqual([null, null, null]);
    expect(codes(silent.warnings)).toEqual(['focal-length-unknown']);
    expect(toPlane(silent, CAMERA.see(10, 20))?.xMm).toBeCloseTo(10, 8);
  });

  it('knows what is far from the card: more than its longest side', () => {
    expect(isFarFromScale(calibration, { xMm: 85.6 + 85, yMm: 20 })).toBe(false);
    expect(isFarFromScale(calibration, { xMm: 85.6 + 86, yMm: 20 })).toBe(true);
    expect(isFarFromScale(calibration, { xMm: -70, yMm: -70 })).toBe(true);
  });

  it('passes on why corners are refused', () => {
    const [a, b, c, d] = cardSeenBy(CAMERA).corners;
    const refusal = calibrate(cardSeenBy(CAMERA, { corners: [a, d, c, b] }), CAMERA.picture);
    expect(refusal).toEqual({ ok: false, failure: { code: 'corners-mirrored' } });
  });
});

describe('warnings of a card', () => {
  it('speak of a tilt beyond 30 degrees', () => {
    const steep = pinhole({ ...FIXTURE_A, tiltDeg: 31 });
    const warnings = calibrated(cardSeenBy(steep), steep.picture).warnings;
    expect(codes(warnings)).toEqual(['strong-tilt']);
    const moderate = pinhole({ ...FIXTURE_A, tiltDeg: 29 });
    expect(calibrated(cardSeenBy(moderate), moderate.picture).warnings).toEqual([]);
  });

  it('speak of a card that covers less than a tenth of the picture', () => {
    const distant = pinhole({ ...FIXTURE_A, distanceMm: 700 });
    expect(codes(calibrated(cardSeenBy(distant), distant.picture).warnings)).toEqual(['scale-object-small']);
  });

  it('name the corners that a hand put beside the picture, unless they follow from edges that were found', () => {
    const beside = pinhole({ ...FIXTURE_A, aim: { xMm: 240, yMm: 27 } });
    const marks = cardSeenBy(beside);
    const outside = marks.corners.flatMap(({ xPx }, index) => (xPx < 0 ? [index] : []));
    expect(outside).toHaveLength(2);
    expect(calibrated(marks, beside.picture).warnings).toContainEqual({ code: 'corners-beside-picture', corners: outside });
    const side = (from: number): EdgePoint[] =>
      [0.3, 0.5, 0.7].map((share) => {
        const [one, other] = [marks.corners[from], marks.corners[(from + 1) % 4]];
        if (!one || !other) throw new RangeError('Expected four corners');
        return { xPx: one.xPx + share * (other.xPx - one.xPx), yPx: one.yPx + share * (other.yPx - one.yPx), acrossPx: 0.1 };
      });
    const found = calibrated({ ...marks, sidePoints: [side(0), side(1), side(2), side(3)] }, beside.picture);
    expect(codes(found.warnings)).not.toContain('corners-beside-picture');
  });

  it('speak of paper, which is cut coarsely', () => {
    const { widthStandardUncertaintyMm, heightStandardUncertaintyMm, widthMm, heightMm } = KNOWN_RECTANGLES.a6;
    const { see, picture } = CAMERA;
    const corners = cardSeenBy({ see: (x, y) => see((x * widthMm) / 85.6 - 30, (y * heightMm) / 53.98 - 30) }).corners;
    const sheet = cardSeenBy(CAMERA, { object: 'a6', corners, widthMm, heightMm, widthStandardUncertaintyMm, heightStandardUncertaintyMm });
    expect(codes(calibrated(sheet, picture).warnings)).toEqual(['scale-object-coarse']);
  });

  it('speak up when the rectangle has another shape than stated: a corner 2 mm off, or a card taken for another', () => {
    const marks = cardSeenBy(CAMERA);
    const [a, b, , d] = marks.corners;
    const misplaced = calibrated({ ...marks, corners: [a, b, CAMERA.see(85.6, 51.98), d] }, CAMERA.picture);
    expect(codes(misplaced.warnings)).toContain('shape-disagrees');
    expect(misplaced.residualPx).toBeGreaterThan(2);
    const mistaken = calibrated({ ...marks, widthMm: 105, heightMm: 74 }, CAMERA.picture);
    expect(mistaken.warnings).toContainEqual(expect.objectContaining({ code: 'shape-disagrees' }));
  });

  it('speak up when a picture was cropped after its focal length was written', () => {
    // The upper right part of the picture: the optical axis is no longer in its middle, nor the diagonal that of the sensor.
    const steep = pinhole({ ...FIXTURE_A, tiltDeg: 25 });
    const marks = cardSeenBy({
      see: (x, y) => {
        const { xPx, yPx } = steep.see(x, y);
        return { xPx: xPx - 1400, yPx };
      },
    });
    const cropped = { widthPx: 2632, heightPx: 2100, facts: steep.picture.facts };
    expect(codes(calibrated(marks, cropped).warnings)).toContain('shape-disagrees');
  });
});

describe('calibrating on two points', () => {
  const calibration = calibrated(RULE, CAMERA.picture);

  it('gives the scale and the distance of a camera that looks straight down, and no tilt', () => {
    expect(calibration.mmPerPxAtCenter).toBeCloseTo(0.05, 12);
    expect(calibration.station?.heightMm).toBeCloseTo(0.05 * 3000, 9);
    expect([calibration.tiltDeg, calibration.residualPx]).toEqual([null, null]);
    expect(codes(calibration.warnings)).toEqual(['tilt-unknown']);
    expect(calibration.faceHeightMm).toBe(0.5);
  });

  it('has its origin below the camera and the axes of the picture', () => {
    const point = toPlane(calibration, { xPx: 2116, yPx: 1472 });
    expect(point?.xMm).toBeCloseTo(5, 9);
    expect(point?.yMm).toBeCloseTo(-2, 9);
  });

  it('refuses ends in one place', () => {
    const [end] = RULE.ends;
    expect(calibrate({ ...RULE, ends: [end, { ...end, xPx: end.xPx + 0.5 }] }, CAMERA.picture)).toEqual({
      ok: false,
      failure: { code: 'scale-points-coincide' },
    });
  });

  it('warns of a short stretch of rule and of a silent picture', () => {
    const [end] = RULE.ends;
    const short = { ...RULE, ends: [end, { ...end, xPx: end.xPx + 300 }] satisfies TwoPointScale['ends'], distanceMm: 15 };
    expect(codes(calibrated(short, SILENT).warnings)).toEqual([
      'tilt-unknown',
      'scale-object-small',
      'scale-object-coarse',
      'focal-length-unknown',
    ]);
  });
});

/** ISO/IEC 7810:2019 and ISO 216:2007. */
describe('known rectangles', () => {
  it('have the sizes of their standards', () => {
    const sizes = Object.entries(KNOWN_RECTANGLES).map(([name, { widthMm, heightMm }]) => [name, widthMm, heightMm]);
    expect(sizes).toEqual([
      ['id-1', 85.6, 53.98],
      ['a6', 148, 105],
      ['a5', 210, 148],
      ['a4', 297, 210],
    ]);
    expect(KNOWN_RECTANGLES['id-1'].cornerRadiusMm).toBe(3.18);
  });

  it('are uncertain by their tolerances as rectangular distributions', () => {
    expect(KNOWN_RECTANGLES['id-1'].widthStandardUncertaintyMm).toBeCloseTo(0.075, 3);
    expect(KNOWN_RECTANGLES['id-1'].heightStandardUncertaintyMm).toBeCloseTo(0.035, 3);
    expect(KNOWN_RECTANGLES.a4.widthStandardUncertaintyMm / 297).toBeCloseTo(0.0039, 4);
    expect(KNOWN_RECTANGLES.a4.heightStandardUncertaintyMm / 210).toBeCloseTo(0.0055, 4);
  });
});
