import type { LightImage } from '../../src/domain/finding/light.ts';
import { fitHomography } from '../../src/domain/measuring/homography.ts';
import type { PlanePoint } from '../../src/domain/measuring/points.ts';
import { invertHomography, planePointOf } from '../../src/domain/measuring/view.ts';
import type { Pinhole } from './pinhole.ts';
import type { RandomSource } from './random.ts';

const SAMPLES = 4;

/**
 * Draws what a camera sees of a flat scene, each pixel the mean of 16 points, then blurred by 1-2-1 both ways, with noise.
 *
 * @param light of the scene at a point of its plane, 0 to 1.
 */
export function paint({ picture, see }: Pinhole, light: (at: PlanePoint) => number, chance: RandomSource, noise = 0.004): LightImage {
  const plane = [
    { xMm: 0, yMm: 0 },
    { xMm: 80, yMm: 0 },
    { xMm: 80, yMm: 50 },
    { xMm: 0, yMm: 50 },
  ];
  const fit = fitHomography(
    plane,
    plane.map(({ xMm, yMm }) => see(xMm, yMm)),
  );
  if (!fit) throw new Error('Expected a camera that sees the plane');
  const inverse = invertHomography(fit.matrix, see(0, 0));
  const { widthPx, heightPx } = picture;
  const sharp = new Float64Array(widthPx * heightPx);
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      let sum = 0;
      for (let index = 0; index < SAMPLES * SAMPLES; index += 1) {
        const xPx = x + ((index % SAMPLES) + 0.5) / SAMPLES;
        const yPx = y + (Math.floor(index / SAMPLES) + 0.5) / SAMPLES;
        const at = planePointOf(inverse, { xPx, yPx });
        sum += at ? light(at) : 0;
      }
      sharp[y * widthPx + x] = sum / (SAMPLES * SAMPLES);
    }
  }
  const at = (x: number, y: number): number =>
    sharp[Math.min(Math.max(y, 0), heightPx - 1) * widthPx + Math.min(Math.max(x, 0), widthPx - 1)] ?? 0;
  const blurred = new Float32Array(widthPx * heightPx);
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      let sum = 0;
      for (const [dy, down] of [
        [-1, 1],
        [0, 2],
        [1, 1],
      ] as const)
        for (const [dx, across] of [
          [-1, 1],
          [0, 2],
          [1, 1],
        ] as const)
          sum += down * across * at(x + dx, y + dy);
      blurred[y * widthPx + x] = sum / 16 + chance.normal(noise);
    }
  }
  return { widthPx, heightPx, light: blurred };
}

/** Whether a point lies on an ID-1 card with its first corner in the origin. */
export function isOnCard({ xMm, yMm }: PlanePoint): boolean {
  const [widthMm, heightMm, radiusMm] = [85.6, 53.98, 3.18];
  const x = Math.max(radiusMm - xMm, xMm - (widthMm - radiusMm), 0);
  const y = Math.max(radiusMm - yMm, yMm - (heightMm - radiusMm), 0);
  return xMm >= 0 && yMm >= 0 && xMm <= widthMm && yMm <= heightMm && Math.hypot(x, y) <= radiusMm;
}
