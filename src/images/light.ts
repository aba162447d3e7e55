import type { LightImage, LightPlanes } from '../domain/finding/light.ts';
import { decodeSrgb } from '../domain/numerics/srgb.ts';
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
 * @param factor whole; each pixel of the answer is the mean of `factor` x `factor` of the original, what fills no block falls away.
 * @returns the failures of `examinePicture`.
 */
export async function readLight(file: PictureFile, factor = 1): Promise<Result<ReducedLight>> {
  if (!(Number.isInteger(factor) && factor >= 1)) throw new RangeError(`Expected a whole factor of at least 1, got ${factor}`);
  const header = await readHeader(file);
  if (!header.ok) return header;
  const upright = await openUpright(file, header.value);
  if (!upright.ok) return upright;
  try {
    const drawing = upright.value().flatten({ background: 'white' }).toColorspace('srgb').raw();
    const { data, info } = await drawing.toBuffer({ resolveWithObject: true });
    const channels = Array.from({ length: info.channels < 3 ? 1 : 3 }, (_, channel) => channel);
    const [red, green, blue] = channels.map((channel) => linearPlane(data, info, channel, factor));
    if (!red) throw new TypeError(`Expected at least one channel but received ${info.channels}`);
    if (!green || !blue) return succeed({ image: red, colors: [red], factor });
    return succeed({ image: luminanceOf(red, green, blue), colors: [red, green, blue], factor });
  } catch (error) {
    return fail(await decodingFailure(file, header.value.mediaType, error));
  }
}

/** Linear light of each value of sRGB in 8 bits. */
const LINEAR = Float32Array.from({ length: 256 }, (_, value) => decodeSrgb(value / 255));

/**
 * One channel in linear light, reduced at once: at full size the planes of a large picture would not fit into memory.
 *
 * @param bytes sRGB in 8 bits, row by row.
 */
function linearPlane(
  bytes: Uint8Array,
  { width, height, channels }: { readonly width: number; readonly height: number; readonly channels: number },
  channel: number,
  factor: number,
): LightImage {
  const [widthPx, heightPx] = [Math.floor(width / factor), Math.floor(height / factor)];
  const light = new Float32Array(widthPx * heightPx);
  if (factor === 1) {
    for (let index = 0, from = channel; index < light.length; index += 1, from += channels) light[index] = LINEAR[bytes[from] ?? 0] ?? 0;
    return { widthPx, heightPx, light };
  }
  const share = 1 / (factor * factor);
  for (let y = 0; y < heightPx * factor; y += 1) {
    const to = Math.floor(y / factor) * widthPx;
    let from = y * width * channels + channel;
    for (let x = 0; x < widthPx; x += 1) {
      let sum = 0;
      for (let step = 0; step < factor; step += 1, from += channels) sum += LINEAR[bytes[from] ?? 0] ?? 0;
      light[to + x] = (light[to + x] ?? 0) + share * sum;
    }
  }
  return { widthPx, heightPx, light };
}

function luminanceOf(red: LightImage, green: LightImage, blue: LightImage): LightImage {
  const light = new Float32Array(red.light.length);
  for (let index = 0; index < light.length; index += 1) {
    light[index] =
      LUMINANCE[0] * (red.light[index] ?? 0) + LUMINANCE[1] * (green.light[index] ?? 0) + LUMINANCE[2] * (blue.light[index] ?? 0);
  }
  return { widthPx: red.widthPx, heightPx: red.heightPx, light };
}
