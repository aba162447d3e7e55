import type { ImagePoint } from '../../measuring/points.ts';
import { isInside, type LightImage } from '../light.ts';

const ROUNDS = 12;
const SETTLED_PX = 1e-3;
/** The lesser eigenvalue of the gradients' moments over the greater: below, the neighborhood is an edge, not a corner. */
const LEAST_ROUNDNESS = 0.05;

/**
 * Where two edges cross: each gradient near the crossing stands at right angles to the line from the crossing to it (Forstner &
 * Gulch 1987, ISPRS Intercommission Workshop Interlaken, 281). Gradients are central differences of linear light, weighted by a
 * Gaussian about the crossing.
 *
 * @param halfPx half of the side of the square looked at, px; nothing but the two edges may lie in it.
 * @returns null when it leaves the square, the picture, or when there is no corner.
 */
export function refineCrossing(image: LightImage, start: ImagePoint, halfPx: number): ImagePoint | null {
  const half = Math.max(2, Math.round(halfPx));
  const spread = 2 * (0.5 * half) ** 2;
  let at = start;
  for (let round = 0; round < ROUNDS; round += 1) {
    if (!isInside(image, at.xPx, at.yPx, half + 2)) return null;
    const column = Math.floor(at.xPx);
    const row = Math.floor(at.yPx);
    let [xx, xy, yy, bx, by] = [0, 0, 0, 0, 0];
    for (let y = row - half; y <= row + half; y += 1) {
      for (let x = column - half; x <= column + half; x += 1) {
        const index = y * image.widthPx + x;
        const gx = (image.light[index + 1] ?? 0) - (image.light[index - 1] ?? 0);
        const gy = (image.light[index + image.widthPx] ?? 0) - (image.light[index - image.widthPx] ?? 0);
        const dx = x + 0.5 - at.xPx;
        const dy = y + 0.5 - at.yPx;
        const weight = Math.exp(-(dx * dx + dy * dy) / spread);
        xx += weight * gx * gx;
        xy += weight * gx * gy;
        yy += weight * gy * gy;
        bx += weight * (gx * gx * dx + gx * gy * dy);
        by += weight * (gx * gy * dx + gy * gy * dy);
      }
    }
    const determinant = xx * yy - xy * xy;
    if (!(determinant > LEAST_ROUNDNESS * ((xx + yy) / 2) ** 2)) return null;
    const moveX = (yy * bx - xy * by) / determinant;
    const moveY = (xx * by - xy * bx) / determinant;
    at = { xPx: at.xPx + moveX, yPx: at.yPx + moveY };
    if (Math.hypot(at.xPx - start.xPx, at.yPx - start.yPx) > half) return null;
    if (Math.hypot(moveX, moveY) < SETTLED_PX) return at;
  }
  return at;
}
