import { open, stat } from 'node:fs/promises';
import sharp, { type Metadata } from 'sharp';
import { LARGEST_PICTURE_PX, type MediaType } from '../domain/photo/photo.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { isCameraRaw } from './cameraRaw.ts';
import { decodingFailure } from './damage.ts';
import { HEAD_BYTES, kindOf } from './kind.ts';
import type { PictureFile } from './pictureFile.ts';

/** What a file says of itself before any pixel is decoded. Width and height are upright. */
export interface Header {
  readonly mediaType: MediaType;
  readonly widthPx: number;
  readonly heightPx: number;
  /** EXIF orientation that decoding has to apply; 1 for HEIC, whose decoder turns the picture by itself. */
  readonly orientation: number;
  /** The EXIF block, where the container hands it out. */
  readonly exif: Buffer | null;
  readonly colorProfile: Buffer | null;
}

/** Fails for everything that can be told from the first bytes, without decoding. */
export async function readHeader(file: PictureFile): Promise<Result<Header>> {
  const { size } = await stat(file.path);
  if (size === 0) return fail({ code: 'file-empty', file: file.name });
  const kind = kindOf(await headOf(file.path));
  if (kind.known === 'no') return fail({ code: 'file-not-an-image', file: file.name, kind: null });
  if (kind.known === 'not-a-picture') return fail({ code: 'file-not-an-image', file: file.name, kind: kind.name });
  if (kind.known === 'not-kept') return fail({ code: 'file-kind-not-kept', file: file.name, kind: kind.name });
  let metadata: Metadata;
  try {
    metadata = await sharp(file.path, { limitInputPixels: false }).metadata();
  } catch (error) {
    return fail(await decodingFailure(file, kind.mediaType, error));
  }
  const { width, height } = metadata;
  if (width * height > LARGEST_PICTURE_PX) {
    const limitMegapixels = LARGEST_PICTURE_PX / 1e6;
    return fail({ code: 'picture-too-large', file: file.name, megapixels: Math.round(width * height) / 1e6, limitMegapixels });
  }
  if (kind.mediaType === 'image/tiff' && (await isCameraRaw(file.path))) {
    return fail({ code: 'file-kind-not-kept', file: file.name, kind: 'Camera raw' });
  }
  return succeed(headerFrom(kind.mediaType, metadata));
}

function headerFrom(mediaType: MediaType, metadata: Metadata): Header {
  const { orientation = 1, exif = null, icc = null } = metadata;
  const turned = mediaType === 'image/heic' ? 1 : orientation;
  const upright = turned === 1 ? metadata : metadata.autoOrient;
  return {
    mediaType,
    widthPx: upright.width,
    heightPx: upright.height,
    orientation: turned >= 1 && turned <= 8 ? turned : 1,
    exif,
    colorProfile: icc,
  };
}

async function headOf(path: string): Promise<Uint8Array> {
  const handle = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}
