import { setImmediate as giveWay } from 'node:timers/promises';
import sharp from 'sharp';
import { photoPointOf } from '../domain/measuring/photoMap.ts';
import type { Plate } from '../domain/plate/plate.ts';
import { type PlateRaster, rasterOf } from '../domain/plate/raster.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { decodingFailure } from './damage.ts';
import { readHeader } from './header.ts';
import type { PictureFile } from './pictureFile.ts';
import { openUpright, type Upright } from './renditions.ts';

/** Enough for a whole screen; a row of twenty then takes less memory than two photos of 48 megapixels. */
export const CUT_LONGEST_PX = 1400;

/** What lies beyond the photo stays clear. */
const WEBP = { quality: 88, alphaQuality: 90, effort: 3 };

/** Rows drawn before everything else gets its turn. */
const ROWS_AT_ONCE = 48;

const CHANNELS = 4;

/** Places along a side. */
const SHARES = Array.from({ length: 17 }, (_, index) => index / 16);

/** A part of a photo, smaller than it by `perPhotoX` and `perPhotoY`, from (left, top) of the smaller picture on. */
interface Source {
  readonly pixels: Buffer;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly perPhotoX: number;
  readonly perPhotoY: number;
}

/** The skin of a photo laid flat on the plane of its scale object, head up, as WebP. Fails as `examinePicture` does. */
export async function drawPlateCut(file: PictureFile, plate: Plate): Promise<Result<Buffer>> {
  const header = await readHeader(file);
  if (!header.ok) return header;
  const upright = await openUpright(file, header.value);
  if (!upright.ok) return upright;
  const raster = rasterOf(plate, CUT_LONGEST_PX);
  try {
    const source = await sourceFor(upright.value, raster, header.value);
    const pixels = await warp(source, raster);
    const raw = { width: raster.widthPx, height: raster.heightPx, channels: CHANNELS } as const;
    return succeed(await sharp(pixels, { raw }).webp(WEBP).toBuffer());
  } catch (error) {
    return fail(await decodingFailure(file, header.value.mediaType, error));
  }
}

/** The decoder shrinks the photo to about the raster's own fineness first, so that no pixel is skipped when it is sampled. */
async function sourceFor(
  upright: Upright,
  { toPhoto, widthPx, heightPx, photoPerPx }: PlateRaster,
  photo: { readonly widthPx: number; readonly heightPx: number },
): Promise<Source> {
  const width = Math.max(1, Math.round(photo.widthPx / photoPerPx));
  const height = Math.max(1, Math.round(photo.heightPx / photoPerPx));
  const [perPhotoX, perPhotoY] = [width / photo.widthPx, height / photo.heightPx];
  // A lens bends the sides: their middles may lie farther out than their ends.
  const rim = SHARES.flatMap((share) => [
    [share * widthPx, 0],
    [share * widthPx, heightPx],
    [0, share * heightPx],
    [widthPx, share * heightPx],
  ]).flatMap(([x = 0, y = 0]) => photoPointOf(toPhoto, x, y) ?? []);
  const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const left = within(Math.floor(Math.min(...rim.map(({ xPx }) => xPx)) * perPhotoX) - 1, width - 1);
  const top = within(Math.floor(Math.min(...rim.map(({ yPx }) => yPx)) * perPhotoY) - 1, height - 1);
  const right = within(Math.ceil(Math.max(...rim.map(({ xPx }) => xPx)) * perPhotoX) + 1, width);
  const bottom = within(Math.ceil(Math.max(...rim.map(({ yPx }) => yPx)) * perPhotoY) + 1, height);
  const part = { left, top, width: Math.max(1, right - left), height: Math.max(1, bottom - top) };
  const pixels = await upright()
    .flatten({ background: 'white' })
    .toColorspace('srgb')
    .resize(width, height, { fit: 'fill' })
    .extract(part)
    .ensureAlpha()
    .raw()
    .toBuffer();
  return { pixels, width: part.width, height: part.height, left, top, perPhotoX, perPhotoY };
}

/** Each pixel of the raster from the four around its place in the source. */
async function warp(source: Source, { widthPx, heightPx, toPhoto }: PlateRaster): Promise<Buffer> {
  const drawn = Buffer.alloc(widthPx * heightPx * CHANNELS);
  for (let row = 0; row < heightPx; row += 1) {
    if (row % ROWS_AT_ONCE === 0) await giveWay();
    for (let column = 0; column < widthPx; column += 1) {
      const at = photoPointOf(toPhoto, column + 0.5, row + 0.5);
      if (at)
        sample(
          source,
          at.xPx * source.perPhotoX - source.left - 0.5,
          at.yPx * source.perPhotoY - source.top - 0.5,
          drawn,
          (row * widthPx + column) * CHANNELS,
        );
    }
  }
  return drawn;
}

/** Bilinear; nothing is written for a place outside. */
function sample({ pixels, width, height }: Source, x: number, y: number, into: Buffer, offset: number): void {
  if (x < -0.5 || y < -0.5 || x > width - 0.5 || y > height - 0.5) return;
  const x0 = Math.min(width - 1, Math.max(0, Math.floor(x)));
  const y0 = Math.min(height - 1, Math.max(0, Math.floor(y)));
  const x1 = Math.min(width - 1, x0 + 1);
  const y1 = Math.min(height - 1, y0 + 1);
  const right = Math.min(1, Math.max(0, x - x0));
  const below = Math.min(1, Math.max(0, y - y0));
  const upper = y0 * width;
  const lower = y1 * width;
  for (let channel = 0; channel < 3; channel += 1) {
    const above = mix(pixels[(upper + x0) * CHANNELS + channel], pixels[(upper + x1) * CHANNELS + channel], right);
    const under = mix(pixels[(lower + x0) * CHANNELS + channel], pixels[(lower + x1) * CHANNELS + channel], right);
    into[offset + channel] = above + (under - above) * below + 0.5;
  }
  into[offset + 3] = 255;
}

function mix(a: number | undefined, b: number | undefined, share: number): number {
  return (a ?? 0) * (1 - share) + (b ?? 0) * share;
}
