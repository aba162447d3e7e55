import type { ImagePoint } from '../../measuring/points.ts';
import type { LightImage, LightPlanes } from '../light.ts';

/** A part of a picture with a frame of its own: its point (0, 0) is the picture's `origin`. */
export interface PictureWindow {
  readonly planes: LightPlanes;
  readonly origin: ImagePoint;
  /** How far the whole picture reaches, in the window's frame. */
  readonly frame: Frame;
}

/** A rectangle with its sides along those of the picture, px. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** As near to the border of a picture as there are centers of pixels. */
const BORDER_PX = 0.5;

export function isWithin({ left, top, right, bottom }: Frame, { xPx, yPx }: ImagePoint): boolean {
  return xPx >= left + BORDER_PX && xPx <= right - BORDER_PX && yPx >= top + BORDER_PX && yPx <= bottom - BORDER_PX;
}

/** The square of +-`halfPx` about a point, as far as the picture reaches. */
export function windowOf(planes: LightPlanes, about: ImagePoint, halfPx: number): PictureWindow {
  const [first, ...others] = planes;
  const left = clamp(Math.floor(about.xPx - halfPx), 0, first.widthPx - 1);
  const top = clamp(Math.floor(about.yPx - halfPx), 0, first.heightPx - 1);
  const right = clamp(Math.ceil(about.xPx + halfPx), left + 1, first.widthPx);
  const bottom = clamp(Math.ceil(about.yPx + halfPx), top + 1, first.heightPx);
  const cut = ({ widthPx, light }: LightImage): LightImage => {
    const part = new Float32Array((right - left) * (bottom - top));
    for (let y = top; y < bottom; y += 1) {
      part.set(light.subarray(y * widthPx + left, y * widthPx + right), (y - top) * (right - left));
    }
    return { widthPx: right - left, heightPx: bottom - top, light: part };
  };
  return {
    planes: [cut(first), ...others.map(cut)],
    origin: { xPx: left, yPx: top },
    frame: { left: -left, top: -top, right: first.widthPx - left, bottom: first.heightPx - top },
  };
}

/** Added to light before its logarithm is taken: in deep shadow the grain would speak louder than the color. */
const GRAIN = 0.01;

/**
 * Logarithms of red over green and blue over green. A shadow dims all three alike and leaves these in place; so does relief
 * on a coin. What remains are borders between materials.
 *
 * @returns null for a gray picture.
 */
export function huesOf(planes: LightPlanes): LightPlanes | null {
  const [red, green, blue] = planes;
  if (!green || !blue) return null;
  const over = ({ widthPx, heightPx, light }: LightImage): LightImage => {
    const ratio = new Float32Array(light.length);
    for (let index = 0; index < ratio.length; index += 1) {
      ratio[index] = Math.log(((light[index] ?? 0) + GRAIN) / ((green.light[index] ?? 0) + GRAIN));
    }
    return { widthPx, heightPx, light: ratio };
  };
  return [over(red), over(blue)];
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
