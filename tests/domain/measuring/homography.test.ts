import { describe, expect, it } from 'vitest';
import { fitHomography, type HomographyFit } from '../../../src/domain/measuring/homography.ts';
import type { ImagePoint, PlanePoint } from '../../../src/domain/measuring/points.ts';
import { invertHomography, planePointOf } from '../../../src/domain/measuring/view.ts';
import { addScaled, type Matrix3 } from '../../../src/domain/numerics/matrix3.ts';
import { openCvHomography } from '../../support/opencv.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { type RandomSource, randomSource } from '../../support/random.ts';

const CARD: readonly PlanePoint[] = [
  { xMm: 0, yMm: 0 },
  { xMm: 85.6, yMm: 0 },
  { xMm: 85.6, yMm: 53.98 },
  { xMm: 0, yMm: 53.98 },
];

/** Fixture A: computed apart with numpy; focal length 3000 px, tilt 15 degrees, card centre 300 mm away on the axis. */
const FIXTURE_A_MATRIX: Matrix3 = [
  9.009938662781174, 0.8053181083799945, 1612.0782983489148, 0.3595053351623149, 10.868417153094688, 1205.853999338871,
  -0.000432100965343937, 0.0007484208259752578, 1,
];

interface Scene {
  readonly plane: readonly PlanePoint[];
  readonly image: readonly ImagePoint[];
  readonly see: (xMm: number, yMm: number) => ImagePoint;
}

/** A card or a board seen by a phone held over it, tilted up to 35 degrees. Coordinates are rounded to single precision, as the reference rounds them. */
function randomScene(random: RandomSource, points: number, noisePx: number): Scene {
  const width = random.uniform(40, 120);
  const height = random.uniform(40, 120);
  const { see } = pinhole({
    tiltDeg: random.uniform(0, 35),
    axisDeg: random.uniform(0, 360),
    rollDeg: random.uniform(0, 360),
    distanceMm: random.uniform(180, 450),
    aim: { xMm: width / 2 + random.uniform(-30, 30), yMm: height / 2 + random.uniform(-30, 30) },
    focalPx: 3000,
    widthPx: 4032,
    heightPx: 3024,
  });
  const corners: PlanePoint[] = [
    { xMm: 0, yMm: 0 },
    { xMm: width, yMm: 0 },
    { xMm: width, yMm: height },
    { xMm: 0, yMm: height },
  ];
  while (corners.length < points) corners.push({ xMm: random.uniform(0, width), yMm: random.uniform(0, height) });
  const plane = corners.map(({ xMm, yMm }) => ({ xMm: Math.fround(xMm), yMm: Math.fround(yMm) }));
  const image = plane.map(({ xMm, yMm }) => {
    const seen = see(xMm, yMm);
    return { xPx: Math.fround(seen.xPx + random.normal(noisePx)), yPx: Math.fround(seen.yPx + random.normal(noisePx)) };
  });
  return { plane, image, see };
}

function fitted({ plane, image }: Pick<Scene, 'plane' | 'image'>): HomographyFit {
  const fit = fitHomography(plane, image);
  if (!fit) throw new Error('Expected the points to determine a homography');
  return fit;
}

function onPlane(matrix: Matrix3, at: ImagePoint): PlanePoint {
  const point = planePointOf(invertHomography(matrix, at), at);
  if (!point) throw new Error('Expected the pixel to show a point of the plane');
  return point;
}

function apart(a: PlanePoint, b: PlanePoint): number {
  return Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
}

describe('homography of fixture A', () => {
  it('is recovered from the four corners to rounding', () => {
    const { see } = pinhole(FIXTURE_A);
    const fit = fitted({ plane: CARD, image: CARD.map(({ xMm, yMm }) => see(xMm, yMm)) });
    fit.matrix.forEach((entry, index) => {
      expect(Math.abs(entry / (FIXTURE_A_MATRIX[index] ?? Number.NaN) - 1)).toBeLessThan(1e-10);
    });
    expect(fit.residualSumOfSquaresPx2).toBeLessThan(1e-18);
    expect(fit.degreesOfFreedom).toBe(0);
  });
});

describe("homography against OpenCV's findHomography", () => {
  it('puts points of the plane at the same place to 1e-6 on 200 noise-free cases', async () => {
    const reference = await openCvHomography();
    const random = randomSource(20_260);
    for (let round = 0; round < 200; round += 1) {
      const scene = randomScene(random, [4, 5, 8, 24][round % 4] ?? 4, 0);
      const ours = fitted(scene).matrix;
      const theirs = reference(scene.plane, scene.image);
      for (const at of scene.image) {
        // Relative to the distances in question, up to about a hundred millimeters.
        expect(apart(onPlane(ours, at), onPlane(theirs, at)) / 100).toBeLessThan(1e-6);
      }
    }
  });

  it('finds the same least-squares solution with noise, and both miss the truth by what the noise explains', async () => {
    const reference = await openCvHomography();
    const random = randomSource(4_711);
    const noisePx = 0.3;
    let squares = 0;
    const rounds = 200;
    for (let round = 0; round < rounds; round += 1) {
      const scene = randomScene(random, 24, noisePx);
      const fit = fitted(scene);
      const theirs = reference(scene.plane, scene.image);
      const probe = scene.see(20, 20);
      const found = onPlane(fit.matrix, probe);
      const missed = apart(found, { xMm: 20, yMm: 20 });
      expect(apart(found, onPlane(theirs, probe))).toBeLessThan(0.001);

      // First-order variance of that point from the responses to each observation.
      const base = found;
      const variance = fit.responses.reduce((sum, response) => {
        const step = 1e-3;
        const moved = onPlane(addScaled(fit.matrix, response, step), probe);
        return sum + ((apart(moved, base) / step) * noisePx) ** 2;
      }, 0);
      squares += missed ** 2 / variance;
      expect(fit.degreesOfFreedom).toBe(40);
      expect(fit.residualSumOfSquaresPx2 / noisePx ** 2).toBeGreaterThan(10);
      expect(fit.residualSumOfSquaresPx2 / noisePx ** 2).toBeLessThan(90);
    }
    // Mean squared error in units of its variance: 1, with a relative spread of about 1 / sqrt(200).
    expect(squares / rounds).toBeGreaterThan(0.75);
    expect(squares / rounds).toBeLessThan(1.25);
  });
});

describe('responses of a homography', () => {
  it('foretell what the fit becomes when an observation moves', () => {
    const scene = randomScene(randomSource(7), 6, 0);
    const fit = fitted(scene);
    const stepPx = 1e-3;
    fit.responses.forEach((response, observation) => {
      const image = scene.image.map((point, index) => {
        if (index !== observation >> 1) return point;
        return observation % 2 === 0 ? { ...point, xPx: point.xPx + stepPx } : { ...point, yPx: point.yPx + stepPx };
      });
      const moved = fitted({ plane: scene.plane, image });
      moved.matrix.forEach((entry, index) => {
        const foretold = stepPx * (response[index] ?? Number.NaN);
        const change = entry - (fit.matrix[index] ?? Number.NaN);
        expect(Math.abs(change - foretold)).toBeLessThan(1e-3 * Math.abs(foretold) + 1e-9 * Math.abs(entry));
      });
    });
  });
});

describe('points that do not determine a homography', () => {
  const square: readonly ImagePoint[] = [
    { xPx: 0, yPx: 0 },
    { xPx: 100, yPx: 0 },
    { xPx: 100, yPx: 100 },
    { xPx: 0, yPx: 100 },
  ];

  it('give none where three of four lie on a line, whatever the rounding makes of it', () => {
    // As clicks fall in a window: the last digits are those of a canvas, and the middle of the three is not quite between.
    for (const middleX of [895.0048076923077, 895, 894.9999999999999, 900.1234567]) {
      const corners = [
        { xPx: 555.3725961538462, yPx: 439.6826923076923 },
        { xPx: middleX, yPx: 439.6826923076923 },
        { xPx: 1234.6370192307693, yPx: 439.6826923076923 },
        { xPx: 1008.2155288461538, yPx: 914.0192307692308 },
      ];
      expect(fitHomography(CARD, corners)).toBeNull();
    }
  });

  it('give none: all on a line, or all in one place', () => {
    expect(
      fitHomography(
        CARD,
        square.map((_, index) => ({ xPx: 10 * index, yPx: 20 * index })),
      ),
    ).toBeNull();
    expect(
      fitHomography(
        CARD,
        square.map(() => ({ xPx: 5, yPx: 5 })),
      ),
    ).toBeNull();
  });

  it('are refused when there are fewer than four', () => {
    expect(() => fitHomography(CARD.slice(0, 3), square.slice(0, 3))).toThrow(/four/);
  });
});

describe('inverse of a homography', () => {
  it('undoes it on the visible side and says nothing beyond the horizon', () => {
    const { see } = pinhole({ ...FIXTURE_A, tiltDeg: 60, axisDeg: 0 });
    const image = CARD.map(({ xMm, yMm }) => see(xMm, yMm));
    const fit = fitted({ plane: CARD, image });
    const inverse = invertHomography(fit.matrix, image[0] ?? { xPx: 0, yPx: 0 });
    const back = planePointOf(inverse, see(30, 40));
    expect(back?.xMm).toBeCloseTo(30, 8);
    expect(back?.yMm).toBeCloseTo(40, 8);
    // The horizon of a plane tilted by 60 degrees stands 30 degrees from the optical axis: 3000 tan 30 px from the middle.
    const horizonPx = 3000 * Math.tan(Math.PI / 6);
    const away = (px: number): ImagePoint => ({ xPx: 2016 - px * Math.sin(Math.PI / 36), yPx: 1512 + px * Math.cos(Math.PI / 36) });
    const hidden = [-1, 1].filter((side) => planePointOf(inverse, away(side * (horizonPx + 1))) === null);
    expect(hidden).toHaveLength(1);
    for (const side of [-1, 1]) expect(planePointOf(inverse, away(side * (horizonPx - 1)))).not.toBeNull();
  });
});
