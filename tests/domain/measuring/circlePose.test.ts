import { describe, expect, test } from 'vitest';
import { directEllipse } from '../../../src/domain/finding/coin/fitEllipse.ts';
import { lensOf } from '../../../src/domain/measuring/camera.ts';
import { circlePoses, tiltOf } from '../../../src/domain/measuring/circlePose.ts';
import type { Ellipse } from '../../../src/domain/measuring/ellipse.ts';
import { type PinholePlacement, pinhole } from '../../support/pinhole.ts';

const RADIUS_MM = 12.13;

/** A camera 300 mm in front of the aim, tilted about the picture's x axis; the coin lies (20, 15) mm from the aim. */
function seen(tiltDeg: number, coin = { xMm: 20, yMm: 15 }) {
  const placement: PinholePlacement = {
    tiltDeg,
    axisDeg: 0,
    rollDeg: 0,
    distanceMm: 300,
    aim: { xMm: 0, yMm: 0 },
    focalPx: 3000,
    widthPx: 4032,
    heightPx: 3024,
  };
  const camera = pinhole(placement);
  const rim = Array.from({ length: 60 }, (_, index) => {
    const angle = (index * Math.PI) / 30;
    return camera.see(coin.xMm + RADIUS_MM * Math.cos(angle), coin.yMm + RADIUS_MM * Math.sin(angle));
  });
  const ellipse = directEllipse(rim);
  if (!ellipse) throw new Error('The rim is no ellipse');
  const lens = lensOf(camera.picture);
  const poses = circlePoses(ellipse, lens, RADIUS_MM);
  if (!poses) throw new Error('No circle was found');
  return { ellipse, lens, poses, camera };
}

function naiveTilt({ semiMajorPx, semiMinorPx }: Ellipse): number {
  return (Math.acos(semiMinorPx / semiMajorPx) * 180) / Math.PI;
}

describe('the circle behind an ellipse', () => {
  test.each([3, 10, 20, 30, 60])('has the true tilt of %i degrees and the true middle among its two solutions', (tiltDeg) => {
    const { poses } = seen(tiltDeg);
    const nearest = poses.map(tiltOf).toSorted((one, other) => Math.abs(one - tiltDeg) - Math.abs(other - tiltDeg))[0];
    expect(nearest).toBeCloseTo(tiltDeg, 5);
    const [sin, cos] = [Math.sin((tiltDeg * Math.PI) / 180), Math.cos((tiltDeg * Math.PI) / 180)];
    const errors = poses.map(({ centre }) => Math.hypot(centre[0] - 20, centre[1] - 15 * cos, centre[2] - (300 + 15 * sin)));
    expect(Math.min(...errors)).toBeLessThan(1e-4);
  });

  test('leaves a false solution even straight from above, when the coin lies off the axis', () => {
    const tilts = seen(0).poses.map(tiltOf);
    expect(Math.min(...tilts)).toBeCloseTo(0, 4);
    // Twice the angle of the line of sight to the axis of the cone; recomputed apart from this program.
    expect(Math.max(...tilts)).toBeCloseTo(9.51, 1);
  });

  // What the axes alone would say; measured on the same pictures in an independent computation.
  test.each([
    [10, 13.2],
    [20, 23.1],
    [30, 33.1],
  ])('a true tilt of %i degrees would be read as %f from the ratio of the axes', (tiltDeg, misreadDeg) => {
    const { ellipse, poses } = seen(tiltDeg);
    expect(naiveTilt(ellipse)).toBeCloseTo(misreadDeg, 0);
    expect(Math.abs(naiveTilt(ellipse) - tiltDeg)).toBeGreaterThan(2.5);
    expect(Math.min(...poses.map((pose) => Math.abs(tiltOf(pose) - tiltDeg)))).toBeLessThan(1e-5);
  });

  test('says which part of the rim is nearer, differently for its two solutions', () => {
    const { poses } = seen(25);
    // Tilted about x, so the far side is down (y grows with depth): the near edge points up, the false one down.
    const [one, other] = poses.map(({ nearEdgeRad }) => nearEdgeRad);
    expect(Math.cos((one ?? 0) - (other ?? 0))).toBeLessThan(-0.9);
  });
});
