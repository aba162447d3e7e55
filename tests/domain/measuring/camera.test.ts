import { describe, expect, it } from 'vitest';
import { focalStandardUncertaintyPx, lensOf, poseOf } from '../../../src/domain/measuring/camera.ts';
import { fitHomography } from '../../../src/domain/measuring/homography.ts';
import { rigidResidualPx } from '../../../src/domain/measuring/rigidResidual.ts';
import { invertHomography, localScaleMmPerPx, planePointOf, spacePointOf } from '../../../src/domain/measuring/view.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { randomSource } from '../../support/random.ts';

const CARD = [
  { xMm: 0, yMm: 0 },
  { xMm: 85.6, yMm: 0 },
  { xMm: 85.6, yMm: 53.98 },
  { xMm: 0, yMm: 53.98 },
];

const CAMERA = pinhole(FIXTURE_A);
const CORNERS = CARD.map(({ xMm, yMm }) => CAMERA.see(xMm, yMm));
const LENS = { focalPx: 3000, centre: { xPx: 2016, yPx: 1512 }, known: true };

function fixtureMatrix() {
  const fit = fitHomography(CARD, CORNERS);
  if (!fit) throw new Error('Expected the corners to determine a homography');
  return fit.matrix;
}

describe('focal length in pixels', () => {
  it('follows the diagonal, as CIPA DCG-001 defines the 35 mm equivalent', () => {
    const lens = lensOf({ widthPx: 4032, heightPx: 3024, facts: { focalLength35Mm: 26 } });
    expect(lens.focalPx).toBeCloseTo(3028.66, 2);
    expect(lens.centre).toEqual({ xPx: 2016, yPx: 1512 });
    expect(lensOf({ widthPx: 3024, heightPx: 4032, facts: { focalLength35Mm: 26 } }).focalPx).toBe(lens.focalPx);
  });

  it('is uncertain by its rounding and by focusing, and not known at all without EXIF', () => {
    const picture = { widthPx: 4032, heightPx: 3024, facts: { focalLength35Mm: 26 } };
    const lens = lensOf(picture);
    expect(focalStandardUncertaintyPx(lens, picture) / lens.focalPx).toBeCloseTo(Math.hypot(0.5 / Math.sqrt(3) / 26, 0.02), 6);
    const silent = { ...picture, facts: { focalLength35Mm: null } };
    expect(lensOf(silent).known).toBe(false);
    expect(focalStandardUncertaintyPx(lensOf(silent), silent)).toBe(0);
  });
});

/** Fixture A, computed apart with numpy: tilt, camera position and what a wrong focal length makes of them. */
describe('pose of fixture A', () => {
  it('has the tilt, the foot and the height it was made with', () => {
    const pose = poseOf(fixtureMatrix(), LENS, { xMm: 42.8, yMm: 26.99 });
    expect(pose.tiltDeg).toBeCloseTo(15, 8);
    expect(pose.station.foot.xMm).toBeCloseTo(81.622856765, 6);
    expect(pose.station.foot.yMm).toBeCloseTo(-40.253160413, 6);
    expect(pose.station.heightMm).toBeCloseTo(289.777747887, 6);
    expect(pose.aspect).toBeCloseTo(1, 9);
    expect(pose.skew).toBeCloseTo(0, 9);
  });

  it('answers to a focal length that is wrong by 5 % as computed apart', () => {
    const origin = { xMm: 0, yMm: 0 };
    const short = poseOf(fixtureMatrix(), { ...LENS, focalPx: 2850 }, origin);
    expect(short.tiltDeg).toBeCloseTo(14.2814, 4);
    expect(short.station.heightMm).toBeCloseTo(276.6445, 4);
    expect(short.aspect).toBeCloseTo(1.00164, 6);
    const long = poseOf(fixtureMatrix(), { ...LENS, focalPx: 3150 }, origin);
    expect(long.tiltDeg).toBeCloseTo(15.7138, 4);
    expect(long.station.heightMm).toBeCloseTo(302.7083, 4);
    expect(long.aspect).toBeCloseTo(0.998291, 6);
  });

  it('does not depend on which way round the map is scaled', () => {
    const matrix = fixtureMatrix();
    const [a, b, c, d, e, f, g, h, i] = matrix;
    const turned = poseOf([-a, -b, -c, -d, -e, -f, -g, -h, -i], LENS, { xMm: 42.8, yMm: 26.99 });
    expect(turned.station.heightMm).toBeCloseTo(289.777747887, 6);
    expect(turned.station.foot.xMm).toBeCloseTo(81.622856765, 6);
  });
});

/** A point 8 mm above the plane of fixture A, computed apart. */
describe('height parallax of fixture A', () => {
  const inverse = invertHomography(fixtureMatrix(), { xPx: 2016, yPx: 1512 });
  const raised = { xPx: 1781.8131749855, yPx: 1386.2327973372 };

  it('shifts the point on the plane as computed apart', () => {
    const flat = planePointOf(inverse, raised);
    expect(flat?.xMm).toBeCloseTo(18.2504549851, 7);
    expect(flat?.yMm).toBeCloseTo(16.5687018819, 7);
    expect(CAMERA.see(20, 15, 8).xPx).toBeCloseTo(raised.xPx, 7);
    expect(CAMERA.see(20, 15, 8).yPx).toBeCloseTo(raised.yPx, 7);
  });

  it('is undone exactly along the line of sight', () => {
    const { station } = poseOf(fixtureMatrix(), LENS, { xMm: 42.8, yMm: 26.99 });
    const point = spacePointOf({ imageToPlane: inverse, station }, raised, 8);
    expect(point?.xMm).toBeCloseTo(20, 7);
    expect(point?.yMm).toBeCloseTo(15, 7);
    expect(point?.zMm).toBe(8);
  });

  it('has no answer for a height that reaches the camera', () => {
    const station = { foot: { xMm: 0, yMm: 0 }, heightMm: 10 };
    expect(spacePointOf({ imageToPlane: inverse, station }, raised, 10)).toBeNull();
    expect(spacePointOf({ imageToPlane: inverse, station }, raised, 9.9)).not.toBeNull();
  });
});

describe('local scale', () => {
  it('is the size of a small square of the plane over that of its picture', () => {
    const inverse = invertHomography(fixtureMatrix(), { xPx: 2016, yPx: 1512 });
    const at = { xPx: 2300, yPx: 900 };
    const [left, right, up, down] = [
      planePointOf(inverse, { ...at, xPx: at.xPx - 0.5 }),
      planePointOf(inverse, { ...at, xPx: at.xPx + 0.5 }),
      planePointOf(inverse, { ...at, yPx: at.yPx - 0.5 }),
      planePointOf(inverse, { ...at, yPx: at.yPx + 0.5 }),
    ];
    if (!left || !right || !up || !down) throw new Error('Expected four points on the plane');
    const area = Math.abs((right.xMm - left.xMm) * (down.yMm - up.yMm) - (right.yMm - left.yMm) * (down.xMm - up.xMm));
    expect(localScaleMmPerPx(inverse, at)).toBeCloseTo(Math.sqrt(area), 8);
  });
});

describe('residual of a rigid card', () => {
  const frameOf = (corners: typeof CORNERS) => {
    const fit = fitHomography(CARD, corners);
    if (!fit) throw new Error('Expected the corners to determine a homography');
    return poseOf(fit.matrix, LENS, { xMm: 42.8, yMm: 26.99 }).frame;
  };

  it('vanishes for the true corners', () => {
    expect(rigidResidualPx(frameOf(CORNERS), LENS, CARD, CORNERS)).toBeLessThan(1e-9);
  });

  it('has the two degrees of freedom that eight coordinates leave after six parameters', () => {
    const random = randomSource(11);
    const noisePx = 0.5;
    const rounds = 1_000;
    let squares = 0;
    for (let round = 0; round < rounds; round += 1) {
      const corners = CORNERS.map(({ xPx, yPx }) => ({ xPx: xPx + random.normal(noisePx), yPx: yPx + random.normal(noisePx) }));
      squares += (4 * rigidResidualPx(frameOf(corners), LENS, CARD, corners) ** 2) / noisePx ** 2;
    }
    // Mean of chi-squared with 2 degrees of freedom, give or take 4 standard errors of 2 / sqrt(1000).
    expect(Math.abs(squares / rounds - 2)).toBeLessThan(0.26);
  });
});
