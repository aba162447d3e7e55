import { describe, expect, it } from 'vitest';
import { lensOf, poseOf } from '../../../src/domain/measuring/camera.ts';
import { fitHomography } from '../../../src/domain/measuring/homography.ts';
import { rectangleOutline } from '../../../src/domain/measuring/rectangleView.ts';
import { openCvPose } from '../../support/opencv.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';
import { randomSource } from '../../support/random.ts';

const CARD = { widthMm: 85.6, heightMm: 53.98 };

describe("the camera's pose against OpenCV's solvePnP", () => {
  it('is the same on 60 noise-free views, and with noise as near as the noise of both explains', async () => {
    const reference = await openCvPose();
    const random = randomSource(60);
    const apart: number[] = [];
    for (let view = 0; view < 60; view += 1) {
      const { see, picture } = pinhole({
        ...FIXTURE_A,
        tiltDeg: random.uniform(3, 35),
        axisDeg: random.uniform(0, 360),
        rollDeg: random.uniform(0, 360),
        distanceMm: random.uniform(200, 500),
      });
      const lens = lensOf(picture);
      const plane = rectangleOutline(CARD);
      const poses = (noisePx: number) => {
        const image = plane.map(({ xMm, yMm }) => {
          const { xPx, yPx } = see(xMm, yMm);
          return { xPx: xPx + random.normal(noisePx), yPx: yPx + random.normal(noisePx) };
        });
        const fit = fitHomography(plane, image);
        if (!fit) throw new Error('Expected a homography');
        const ours = poseOf(fit.matrix, lens, { xMm: CARD.widthMm / 2, yMm: CARD.heightMm / 2 });
        return { ours, theirs: reference(plane, image, lens.focalPx, lens.centre) };
      };
      const exact = poses(0);
      expect(Math.abs(exact.ours.tiltDeg - exact.theirs.tiltDeg)).toBeLessThan(1e-3);
      expect(Math.abs(exact.ours.station.heightMm / exact.theirs.heightMm - 1)).toBeLessThan(1e-5);
      const noisy = poses(0.3);
      apart.push(Math.abs(noisy.ours.tiltDeg - noisy.theirs.tiltDeg));
    }
    // Corners to 0.3 px leave a tilt of a card at 300 mm uncertain by some 0.2 degrees, whichever sum of squares is made least.
    expect(Math.sqrt(apart.reduce((sum, value) => sum + value * value, 0) / apart.length)).toBeLessThan(0.4);
  });
});
