import { decodeSrgb, type LightImage, type LightPlanes, reduceLight } from '../domain/finding/light.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { decodingFailure } from './damage.ts';
import { readHeader } from './header.ts';
import type { PictureFile } from './pictureFile.ts';
import { openUpright } from './renditions.ts';

/** A picture in linear light, and how much smaller it is than the original. */
export interface ReducedLight {
  readonly image: LightImage;
  /** Linear red, green and blue of the same frame; luminance alone for a gray picture. */
  readonly colors: LightPlanes;
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
    const drawing = upright.value().flatten({ background: 'white' }).toColorspace('srgb').raw();
    const { data, info } = await drawing.toBuffer({ resolveWithObject: true });
    const factor = Math.max(1, Math.ceil(Math.max(info.width, info.height) / longestPx));
    const planes = linearPlanes(data, info.channels, info.width, info.height).map((plane) => reduceLight(plane, factor));
    const [red, green, blue] = planes;
    if (!red) throw new TypeError(`Expected at least one channel but received ${info.channels}`);
    if (!green || !blue) return succeed({ image: red, colors: [red], factor });
    return succeed({ image: luminanceOf(red, green, blue), colors: [red, green, blue], factor });
  } catch (error) {
    return fail(await decodingFailure(file, header.value.mediaType, error));
  }
}

/** @param bytes sRGB in 8 bits, row by row, one channel (gray, perhaps with opacity) or three (perhaps four). */
function linearPlanes(bytes: Uint8Array, channels: number, widthPx: number, heightPx: number): LightImage[] {
  const linear = Float32Array.from({ length: 256 }, (_, value) => decodeSrgb(value / 255));
  return Array.from({ length: channels < 3 ? 1 : 3 }, (_, channel) => {
    const light = new Float32Array(widthPx * heightPx);
    for (let index = 0, from = channel; index < light.length; index += 1, from += channels) light[index] = linear[bytes[from] ?? 0] ?? 0;
    return { widthPx, heightPx, light };
  });
}

function luminanceOf(red: LightImage, green: LightImage, blue: LightImage): LightImage {
  const light = new Float32Array(red.light.length);
  for (let index = 0; index < light.length; index += 1) {
    light[index] =
      LUMINANCE[0] * (red.light[index] ?? 0) + LUMINANCE[1] * (green.light[index] ?? 0) + LUMINANCE[2] * (blue.light[index] ?? 0);
  }
  return { widthPx: red.widthPx, heightPx: red.heightPx, light };
}
