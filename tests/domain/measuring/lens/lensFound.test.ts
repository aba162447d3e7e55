import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../../src/domain/measuring/calibrate.ts';
import { RectangleScale, type RuleTicksScale } from '../../../../src/domain/measuring/calibration.ts';
import { shiftedMarks } from '../../../../src/domain/measuring/distortion.ts';
import { lensCorrections } from '../../../../src/domain/measuring/lens/lensCorrection.ts';
import { lensFound } from '../../../../src/domain/measuring/lens/lensFound.ts';
import { lensShowsOn } from '../../../../src/domain/measuring/lens/lensShows.ts';
import { radialShiftOf, shifted, unshifted } from '../../../../src/domain/measuring/lens/radialShift.ts';
import { measure } from '../../../../src/domain/measuring/measure.ts';
import type { ImagePoint } from '../../../../src/domain/measuring/points.ts';
import { spacePointOf } from '../../../../src/domain/measuring/view.ts';
import { unwrap } from '../../../../src/domain/result.ts';
import { openCvDistortion } from '../../../support/opencv.ts';
import { FIXTURE_A, pinhole } from '../../../support/pinhole.ts';
import { randomSource } from '../../../support/random.ts';
import { cardSeenBy } from '../../../support/simulatedCard.ts';

const camera = pinhole({ ...FIXTURE_A, tiltDeg: 8, aim: { xMm: 75, yMm: 60 } });
const { see, picture } = camera;

/** A rule of 300 mm along the lower part of the picture, its ticks 4 mm long, each found to a twentieth of a pixel. */
function rule(seed: number): RuleTicksScale {
  const random = randomSource(seed);
  const near = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: xPx + random.normal(0.05), yPx: yPx + random.normal(0.05) });
  return {
    kind: 'rule-ticks',
    ends: [see(-75, 130), see(225, 130)],
    graduationMm: 1,
    spanStandardUncertaintyMm: 0.02,
    ticks: Array.from({ length: 301 }, (_, number) => ({
      number,
      from: near(see(number - 75, 128)),
      to: near(see(number - 75, 132)),
    })),
    tickPx: 0.05,
    heightMm: 0,
  };
}

/** A large card whose sides were found at twelve places each. */
function sheet(widthMm: number, heightMm: number): RectangleScale {
  const corners: RectangleScale['corners'] = [see(0, 0), see(widthMm, 0), see(widthMm, heightMm), see(0, heightMm)];
  const side = (fromX: number, fromY: number, toX: number, toY: number) =>
    Array.from({ length: 12 }, (_, index) => {
      const share = (index + 0.5) / 12;
      return { ...see(fromX + share * (toX - fromX), fromY + share * (toY - fromY)), acrossPx: 0.05 };
    });
  return {
    ...cardSeenBy(camera),
    object: 'own',
    corners,
    widthMm,
    heightMm,
    sidePoints: [
      side(0, 0, widthMm, 0),
      side(widthMm, 0, widthMm, heightMm),
      side(widthMm, heightMm, 0, heightMm),
      side(0, heightMm, 0, 0),
    ],
  };
}

describe('undoing a lens', () => {
  it("brings the points of OpenCV's projectPoints with k1 back to where a pinhole sees them, also at the border of the picture", async () => {
    const distort = await openCvDistortion();
    const { focalPx, widthPx, heightPx } = FIXTURE_A;
    const right = widthPx / 2 / focalPx;
    const bottom = heightPx / 2 / focalPx;
    const rays = [-right, -0.2, 0, 0.35, right].flatMap((x) => [-bottom, 0, bottom].map((y) => ({ x, y })));
    for (const k1 of [-0.05, 0.05]) {
      const lens = radialShiftOf({ widthPx, heightPx }, k1 * (Math.hypot(widthPx, heightPx) / 2 / focalPx) ** 2);
      distort(rays, k1, focalPx, lens.centre).forEach((at, index) => {
        const ray = rays[index] ?? { x: Number.NaN, y: Number.NaN };
        const back = unshifted(at, lens);
        // The ray to the picture's own corner ends at its outer border: 0 and the full width, half a pixel from OpenCV's count.
        expect(Math.hypot(back.xPx - lens.centre.xPx - focalPx * ray.x, back.yPx - lens.centre.yPx - focalPx * ray.y)).toBeLessThan(1e-6);
      });
    }
  });

  it('is the inverse of the shift', () => {
    for (const cornerShare of [-0.1, 0.1]) {
      const lens = radialShiftOf(picture, cornerShare);
      for (const at of [lens.centre, { xPx: 10, yPx: 20 }, { xPx: 3000, yPx: 400 }]) {
        const back = unshifted(shifted(at, lens), lens);
        expect(Math.hypot(back.xPx - at.xPx, back.yPx - at.yPx)).toBeLessThan(1e-6);
      }
    }
  });
});

describe('a lens found from what is straight', () => {
  it('is that which bent the ticks of a rule, within its uncertainty', () => {
    for (const [seed, cornerShare] of [
      [1, -0.03],
      [2, -0.01],
      [3, 0.02],
    ] as const) {
      const { shift, isCorrected } = lensFound(shiftedMarks(rule(seed), radialShiftOf(picture, cornerShare)), picture);
      expect(isCorrected).toBe(true);
      expect(Math.abs(shift.cornerShare - cornerShare)).toBeLessThan(0.001);
      expect(Math.abs(shift.cornerShare - cornerShare)).toBeLessThan(2 * shift.standardUncertainty);
    }
  });

  it('is that which bent the sides of a sheet, and undoing it gives lengths back away from it', () => {
    const lens = radialShiftOf(picture, -0.03);
    const marks = shiftedMarks(sheet(140, 110), lens);
    const { view, lens: found } = unwrap(calibrate(marks, picture));
    expect(found.isCorrected).toBe(true);
    expect(found.shift.cornerShare).toBeCloseTo(-0.03, 4);
    const [from, to] = [see(20, 118), see(60, 118)].map((at) => spacePointOf(view, shifted(at, lens), -0.76));
    const straight = unwrap(calibrate(sheet(140, 110), picture)).view;
    const [trueFrom, trueTo] = [see(20, 118), see(60, 118)].map((at) => spacePointOf(straight, at, -0.76));
    if (!from || !to || !trueFrom || !trueTo) throw new Error('Expected the points to lie on the table');
    expect(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)).toBeCloseTo(
      Math.hypot(trueTo.xMm - trueFrom.xMm, trueTo.yMm - trueFrom.yMm),
      2,
    );
  });

  it('is left alone where the sides are too short, and says so', () => {
    expect(lensFound(shiftedMarks(sheet(40, 25), radialShiftOf(picture, 0.004)), picture)).toMatchObject({
      isCorrected: false,
      reason: 'not-significant',
      shift: { cornerShare: 0 },
    });
  });

  it('is not told by marks placed by hand or stored before sides were kept', () => {
    const { sidePoints: _, ...before } = sheet(140, 110);
    const stored = RectangleScale.parse(before);
    expect(lensFound(stored, picture).reason).toBe('nothing-straight');
    const { lens, view } = unwrap(calibrate(stored, picture));
    expect(lens.isCorrected).toBe(false);
    expect(view.radialShift).toBeUndefined();
  });

  it('is not corrected when the keeper leaves the picture as it is; then it stands in the uncertainty', () => {
    const marks = { ...shiftedMarks(rule(1), radialShiftOf(picture, -0.03)), keepsDistortion: true as const };
    const { isCorrected, reason, shift } = lensFound(marks, picture);
    expect([isCorrected, reason, shift.cornerShare]).toEqual([false, 'switched-off', 0]);
    expect(shift.standardUncertainty).toBeGreaterThan(0.029);
  });

  it('is not told by sides that are no straight lines', () => {
    const { sidePoints, ...rest } = sheet(140, 110);
    if (!sidePoints) throw new Error('Expected sides');
    const jagged = sidePoints[0].map((point, index) => ({ ...point, yPx: point.yPx + (index % 2 === 0 ? 2 : -2) }));
    const [, right, bottom, left] = sidePoints;
    expect(lensFound({ ...rest, sidePoints: [jagged, right, bottom, left] }, picture).reason).toBe('uneven');
  });
});

describe('what a lens does, in millimeters', () => {
  const lens = radialShiftOf(picture, -0.03);
  const marks = shiftedMarks(sheet(140, 110), lens);
  const calibration = unwrap(calibrate(marks, picture));

  it('is told of the outermost corner of the scale object, towards the middle of the picture', () => {
    const fromMiddle = ({ xPx, yPx }: ImagePoint) => Math.hypot(xPx - lens.centre.xPx, yPx - lens.centre.yPx);
    const outermost = [see(0, 0), see(140, 0), see(140, 110), see(0, 110)].toSorted((a, b) => fromMiddle(b) - fromMiddle(a))[0];
    if (!outermost) throw new Error('Expected a corner');
    // Through the plane of the sheet: a tenth of a millimeter stands for about a pixel.
    const shiftPx = fromMiddle(outermost) - fromMiddle(shifted(outermost, lens));
    const shows = lensShowsOn(marks, calibration, picture);
    expect(shows?.value).toBeLessThan(0);
    expect(Math.abs(shows?.value ?? 0) / shiftPx).toBeGreaterThan(0.085);
    expect(Math.abs(shows?.value ?? 0) / shiftPx).toBeLessThan(0.115);
    expect(shows?.expandedUncertainty).toBeLessThan(Math.abs(shows?.value ?? 0));
    const left = { ...marks, keepsDistortion: true as const };
    const asItIs = lensShowsOn(left, unwrap(calibrate(left, picture)), picture);
    expect(asItIs?.value).toBe(0);
    expect(asItIs?.expandedUncertainty).toBeGreaterThan(Math.abs(shows?.value ?? 0));
  });

  it('is told of a length as the difference to what the picture gives as it is', () => {
    const placed = (xMm: number, yMm: number) => ({ state: 'placed', at: shifted(see(xMm, yMm), lens) }) as const;
    const reading = {
      landmarks: { 'carapace-front': placed(20, 118), 'carapace-rear': placed(60, 118) },
      carapaceHeight: { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 },
      pointingPx: 1,
    } as const;
    const corrections = lensCorrections(reading, marks, picture, calibration, measure(reading, calibration));
    const asItIs = unwrap(calibrate({ ...marks, keepsDistortion: true }, picture));
    const lengthUnder = (under: typeof calibration) =>
      measure(reading, under).quantities.find(({ name }) => name === 'carapace-length')?.estimate.value ?? Number.NaN;
    expect(lengthUnder(calibration)).toBeCloseTo(40, 2);
    expect(corrections.get('carapace-length')).toBeCloseTo(lengthUnder(calibration) - lengthUnder(asItIs), 9);
    expect(Math.abs(corrections.get('carapace-length') ?? 0)).toBeGreaterThan(0.02);
    expect(lensCorrections(reading, marks, picture, asItIs, measure(reading, asItIs)).size).toBe(0);
  });
});
