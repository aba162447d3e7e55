import { describe, expect, it } from 'vitest';
import type { ScaleMarks } from '../../../src/domain/measuring/calibration.ts';
import {
  CORNER_SHIFT_BOUND,
  CORNER_SHIFT_STANDARD_UNCERTAINTY,
  distortionExcursion,
  shiftedMarks,
} from '../../../src/domain/measuring/distortion.ts';
import { type Ellipse, pointOn } from '../../../src/domain/measuring/ellipse.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { type RadialShift, radialShiftOf, shifted } from '../../../src/domain/measuring/lens/radialShift.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { fail } from '../../../src/domain/result.ts';
import { distanceFrom } from '../../support/ellipseDistance.ts';
import { openCvDistortion } from '../../support/opencv.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { calibrated, cardSeenBy } from '../../support/simulatedCard.ts';
import { quantityOf } from '../../support/trueClicks.ts';

/** From straight above; the card fills x 0 to 85.6 mm, y 0 to 53.98 mm. */
function above(aimXMm: number, aimYMm: number) {
  return pinhole({ ...FIXTURE_A, tiltDeg: 0, rollDeg: 0, aim: { xMm: aimXMm, yMm: aimYMm } });
}

/** A length of 20 mm across the picture whose middle is at a place of the plane. */
function lengthAt(xMm: number, yMm: number, see: (xMm: number, yMm: number) => ImagePoint): Landmarks {
  return {
    'carapace-front': { state: 'placed', at: see(xMm - 10, yMm) },
    'carapace-rear': { state: 'placed', at: see(xMm + 10, yMm) },
  };
}

const FLAT = {
  carapaceHeight: { kind: 'entered', heightMm: 0, standardUncertaintyMm: 0 },
  pointingPx: 1,
} as const;
const ON_TABLE = { heightsMm: { 'carapace-front': 0, 'carapace-rear': 0 } };

function lengthOf(landmarks: Landmarks, marks: ScaleMarks, picture: Parameters<typeof calibrated>[1]) {
  return quantityOf(measure({ landmarks, ...FLAT }, calibrated(marks, picture), ON_TABLE), 'carapace-length');
}

function distortionOf(quantity: ReturnType<typeof lengthOf>): number {
  return quantity.budget.find(({ source }) => source === 'distortion')?.standardUncertainty ?? 0;
}

describe('the shift of a distorting lens', () => {
  it("is that of OpenCV's projectPoints with k1 alone", async () => {
    const distort = await openCvDistortion();
    const { focalPx, widthPx, heightPx } = FIXTURE_A;
    const rays = [-0.6, -0.2, 0, 0.35, 0.65].flatMap((x) => [-0.5, 0, 0.4].map((y) => ({ x, y })));
    for (const k1 of [-0.02, 0.01]) {
      const shift = radialShiftOf({ widthPx, heightPx }, k1 * (Math.hypot(widthPx, heightPx) / 2 / focalPx) ** 2);
      distort(rays, k1, focalPx, shift.centre).forEach((at, index) => {
        const ray = rays[index] ?? { x: Number.NaN, y: Number.NaN };
        const moved = shifted({ xPx: shift.centre.xPx + focalPx * ray.x, yPx: shift.centre.yPx + focalPx * ray.y }, shift);
        expect(Math.hypot(moved.xPx - at.xPx, moved.yPx - at.yPx)).toBeLessThan(1e-6);
      });
    }
  });

  it('moves a corner of the picture by its share and leaves the middle', () => {
    const shift = radialShiftOf({ widthPx: 4000, heightPx: 3000 }, CORNER_SHIFT_BOUND);
    expect(shifted({ xPx: 4000, yPx: 3000 }, shift)).toEqual({ xPx: 2000 + 2000 * 1.005, yPx: 1500 + 1500 * 1.005 });
    expect(shifted(shift.centre, shift)).toEqual(shift.centre);
  });

  it('takes the rim of a coin along to a tenth of a pixel', () => {
    const shift = radialShiftOf({ widthPx: 4032, heightPx: 3024 }, CORNER_SHIFT_BOUND);
    const rims: Ellipse[] = [
      { centre: { xPx: 3200, yPx: 2300 }, semiMajorPx: 210, semiMinorPx: 190, angleRad: 0.4 },
      { centre: { xPx: 900, yPx: 1500 }, semiMajorPx: 180, semiMinorPx: 120, angleRad: 2.9 },
    ];
    for (const rim of rims) {
      const moved = shiftedMarks(coin(rim), shift).rim;
      expect(Math.hypot(moved.centre.xPx - rim.centre.xPx, moved.centre.yPx - rim.centre.yPx)).toBeGreaterThan(0.5);
      for (let angle = 0; angle < 6; angle += 0.5) {
        expect(Math.abs(distanceFrom(moved, shifted(pointOn(rim, angle), shift)))).toBeLessThan(0.1);
      }
    }
    // In the middle of the picture a circle stays one: its radius grows as any point there moves.
    const round = shiftedMarks(coin({ centre: shift.centre, semiMajorPx: 400, semiMinorPx: 400, angleRad: 0 }), shift).rim;
    const radiusPx = 400 * (1 + CORNER_SHIFT_BOUND * (400 / shift.cornerPx) ** 2);
    expect(round.semiMajorPx).toBeCloseTo(radiusPx, 8);
    expect(round.semiMinorPx).toBeCloseTo(radiusPx, 8);
  });
});

describe('distortion in the budget', () => {
  it('is what such a lens does to the length', () => {
    const { see, picture } = above(60, 50);
    const marks = cardSeenBy({ see });
    const stated = lengthOf(lengthAt(110, 90, see), marks, picture);
    const through = (shift: RadialShift) => (xMm: number, yMm: number) => shifted(see(xMm, yMm), shift);
    for (const sign of [-1, 1]) {
      const lens = through(radialShiftOf(picture, sign * CORNER_SHIFT_STANDARD_UNCERTAINTY));
      const seen = lengthOf(lengthAt(110, 90, lens), cardSeenBy({ see: lens }), picture);
      expect(Math.abs(seen.estimate.value - 20) / distortionOf(stated)).toBeGreaterThan(0.97);
      expect(Math.abs(seen.estimate.value - 20) / distortionOf(stated)).toBeLessThan(1.03);
    }
  });

  it('grows with the distance of the skin from the middle while the object lies there', () => {
    const { see, picture } = above(42.8, 26.99);
    const marks = cardSeenBy({ see });
    const [near, farther, far] = [30, 90, 150].map((byMm) => distortionOf(lengthOf(lengthAt(42.8 + byMm, 26.99, see), marks, picture)));
    expect(farther).toBeGreaterThan(2 * (near ?? Number.NaN));
    expect(far).toBeGreaterThan(2 * (farther ?? Number.NaN));
    // Along the radius the scale is off by 3 s (r / R)^2: here R = 252 mm, and the card near the middle takes a little away.
    const share = (radiusMm: number) => 3 * CORNER_SHIFT_STANDARD_UNCERTAINTY * (radiusMm / 252) ** 2;
    expect((far ?? 0) / 20).toBeLessThan(share(150) * 1.01);
    expect((far ?? 0) / 20).toBeGreaterThan(share(150) - share(50.6));
  });

  it('mostly cancels for an object close beside the skin, as far from the middle', () => {
    // A small object, so that it is as far out as the skin with all its corners.
    const small = { widthMm: 20, heightMm: 20 };
    const marksOn = ({ see }: ReturnType<typeof above>): ScaleMarks => ({
      ...cardSeenBy({ see }),
      ...small,
      corners: [see(-10, -10), see(10, -10), see(10, 10), see(-10, 10)],
    });
    const partOf = (camera: ReturnType<typeof above>, xMm: number, yMm: number) =>
      distortionOf(lengthOf(lengthAt(xMm, yMm, camera.see), marksOn(camera), camera.picture));
    // Both 101 mm from the middle of the picture and 25 mm apart; and the object in the middle with the skin that far from it.
    const beside = partOf(above(100, 12.5), 0, 25);
    const apart = partOf(above(0, 0), 100, 12.5);
    expect(beside).toBeLessThan(0.1 * apart);
  });

  it('stays when moved marks no longer calibrate, with the view as it was', () => {
    const { see, picture } = above(42.8, 26.99);
    const marks = cardSeenBy({ see });
    const { view } = calibrated(marks, picture);
    const { below, above: over } = distortionExcursion(marks, picture, view, () => fail({ code: 'corners-collinear' }));
    expect(below.imageToPlane).toBe(view.imageToPlane);
    expect(over.radialShift?.cornerShare).toBe(CORNER_SHIFT_STANDARD_UNCERTAINTY);
    expect(below.radialShift?.cornerShare).toBe(-CORNER_SHIFT_STANDARD_UNCERTAINTY);
  });
});

function coin(rim: Ellipse) {
  return {
    kind: 'coin',
    coin: 'euro-2',
    rim,
    rimPx: 0.2,
    diameterMm: 25.75,
    diameterStandardUncertaintyMm: 0.03,
    thicknessMm: 2.2,
    nearEdgeRad: null,
  } as const;
}
