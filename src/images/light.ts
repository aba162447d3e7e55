import { type LightImage, reduceLight } from '../domain/finding/light.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { decodingFailure } from './damage.ts';
import { readHeader } from './header.ts';
import type { PictureFile } from './picture.ts';
import { openUpright } from './renditions.ts';

/** A picture in linear light, and how much smaller it is than the original. */
export interface ReducedLight {
  readonly image: LightImage;
  /** A point (x, y) of `image` is (factor x, factor y) of the upright original. */
  readonly factor: number;
}

/** Luminance of linear red, green and blue (ITU-R BT.709-6, 3.2; the primaries of sRGB). */
const LUMINANCE = [0.2126, 0.7152, 0.0722] as const;

/**
 * Decodes an upright picture of any kept kind to linear light. Made smaller, when wanted, after linearizing: averaging encoded
 * values would shift edges.
 *
 * @param longestPx the picture is reduced by the least whole factor that brings its longest side down to this.
 * @returns the failures of `examinePicture`.
 */
export async function readLight(file: PictureFile, longestPx: number = Number.POSITIVE_INFINITY): Promise<Result<ReducedLight>> {
  const header = await readHeader(file);
  if (!header.ok) return header;
  const upright = await openUpright(file, header.value);
  if (!upright.ok) return upright;
  try {
    const { data, info } = await upright
      .value()
      .flatten({ background: 'white' })
      .toColorspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true });
    const image = linearLight(data, info.channels, info.width, info.height);
    const factor = Math.max(1, Math.ceil(Math.max(info.width, info.height) / longestPx));
    return succeed({ image: reduceLight(image, factor), factor });
  } catch (error) {
    return fail(await decodingFailure(file, header.value.mediaType, error));
  }
}

/** @param bytes sRGB in 8 bits, one channel (gray) or three, row by row. */
function linearLight(bytes: Uint8Array, channels: number, widthPx: number, heightPx: number): LightImage {
  const light = new Float32Array(widthPx * heightPx);
  const linear = Float64Array.from({ length: 256 }, (_, value) => decodeSrgb(value / 255));
  if (channels < 3) {
    for (let index = 0; index < light.length; index += 1) light[index] = linear[bytes[index * channels] ?? 0] ?? 0;
    return { widthPx, heightPx, light };
  }
  const [red, green, blue] = LUMINANCE.map((weight) => linear.map((value) => value * weight));
  if (!red || !green || !blue) throw new TypeError('Expected three weights');
  for (let index = 0, from = 0; index < light.length; index += 1, from += channels) {
    light[index] = (red[bytes[from] ?? 0] ?? 0) + (green[bytes[from + 1] ?? 0] ?? 0) + (blue[bytes[from + 2] ?? 0] ?? 0);
  }
  return { widthPx, heightPx, light };
}

/** IEC 61966-2-1, from an encoded value of 0 to 1 to linear light. */
export function decodeSrgb(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}
