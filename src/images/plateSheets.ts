import sharp from 'sharp';
import { PAPER } from './paper.ts';

/** A part of a picture, as shares of its sides. */
export interface ShownPart {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The shown part of a cut as a JPEG on white, for sheets. */
export async function cutAsJpeg(cut: Buffer, part: ShownPart): Promise<Buffer> {
  return sharp(await partOf(cut, part))
    .flatten({ background: PAPER })
    .jpeg({ quality: 90, chromaSubsampling: '4:4:4' })
    .toBuffer();
}

export interface PicturePlace {
  readonly picture: Buffer;
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Pages below each other as one PNG: pictures where they belong, the written layer over them. */
export async function stackedPng(
  pages: readonly { readonly places: readonly PicturePlace[]; readonly drawing: string }[],
  page: { readonly widthPx: number; readonly heightPx: number },
): Promise<Buffer> {
  const layers = await Promise.all(
    pages.map(async ({ places, drawing }, index) => {
      const offset = index * page.heightPx;
      const pictures = await Promise.all(places.map((place) => layerOf(place, offset)));
      return [...pictures, { input: Buffer.from(drawing), left: 0, top: offset }];
    }),
  );
  return sharp({ create: { width: page.widthPx, height: page.heightPx * pages.length, channels: 3, background: PAPER } })
    .composite(layers.flat())
    .png({ compressionLevel: 8 })
    .toBuffer();
}

async function layerOf({ picture, leftPx, topPx, widthPx, heightPx }: PicturePlace, offset: number) {
  const input = await sharp(picture)
    .resize(Math.max(1, Math.round(widthPx)), Math.max(1, Math.round(heightPx)), { fit: 'fill' })
    .toBuffer();
  return { input, left: Math.round(leftPx), top: Math.round(topPx) + offset };
}

async function partOf(cut: Buffer, { left, top, width, height }: ShownPart): Promise<Buffer> {
  if (width === 1 && height === 1) return cut;
  const { width: wholeWidth = 1, height: wholeHeight = 1 } = await sharp(cut).metadata();
  return sharp(cut)
    .extract({
      left: Math.floor(left * wholeWidth),
      top: Math.floor(top * wholeHeight),
      width: Math.max(1, Math.floor(width * wholeWidth)),
      height: Math.max(1, Math.floor(height * wholeHeight)),
    })
    .toBuffer();
}
