import { benchSourceOf, type CameraFacts, type MediaType, type RenditionKind } from '../domain/photo/photo.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { NO_FACTS, readCameraFacts, type WrittenFacts } from './cameraFacts.ts';
import { decodingFailure } from './damage.ts';
import { type Header, readHeader } from './header.ts';
import type { PictureFile } from './pictureFile.ts';
import { drawAll, openUpright, whyNoFull } from './renditions.ts';

/** An upright JPEG in sRGB. */
export interface Rendition {
  readonly kind: RenditionKind;
  readonly bytes: Buffer;
}

export interface Picture {
  readonly mediaType: MediaType;
  /** Of the upright frame. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly facts: CameraFacts;
  /** Thumbnail and screen, and `full` for kinds that no browser shows upright by itself. */
  readonly renditions: readonly Rendition[];
}

/**
 * Everything an import needs to know about one file, decoding it once and wholly, so that damage is found at the door.
 * Fails with `file-empty`, `file-truncated`, `file-not-an-image`, `file-kind-not-kept`, `picture-too-large`, `file-unreadable`.
 */
export async function examinePicture(file: PictureFile): Promise<Result<Picture>> {
  const header = await readHeader(file);
  if (!header.ok) return header;
  const { mediaType, widthPx, heightPx, orientation } = header.value;
  const facts = { ...(await writtenFacts(file, header.value)), orientation };
  const full = benchSourceOf({ mediaType, facts }) === 'full';
  const renditions = await draw(file, header.value, full ? ['full', 'screen', 'thumbnail'] : ['screen', 'thumbnail']);
  return renditions.ok ? succeed({ mediaType, widthPx, heightPx, facts, renditions: renditions.value }) : renditions;
}

/** Makes one rendition again, of a file that has passed `examinePicture`. */
export async function makeRendition(file: PictureFile, kind: RenditionKind): Promise<Result<Rendition>> {
  const header = await readHeader(file);
  if (!header.ok) return header;
  const drawn = await draw(file, header.value, [kind]);
  if (!drawn.ok) return drawn;
  const [rendition] = drawn.value;
  if (!rendition) throw new TypeError(`Expected a ${kind} rendition but received none`);
  return succeed(rendition);
}

async function draw(file: PictureFile, header: Header, kinds: readonly RenditionKind[]): Promise<Result<readonly Rendition[]>> {
  const reason = kinds.includes('full') ? whyNoFull(header) : null;
  if (reason !== null) return fail({ code: 'file-unreadable', file: file.name, reason });
  const upright = await openUpright(file, header);
  if (!upright.ok) return upright;
  try {
    return succeed(await drawAll(upright.value, kinds));
  } catch (error) {
    return fail(await decodingFailure(file, header.mediaType, error));
  }
}

/** TIFF carries its EXIF in its own directories; the other containers hand it out as a block. */
async function writtenFacts(file: PictureFile, { mediaType, exif, widthPx, heightPx }: Header): Promise<WrittenFacts> {
  if (exif) return readCameraFacts(exif, { widthPx, heightPx });
  return mediaType === 'image/tiff' ? readCameraFacts(file.path, { widthPx, heightPx }) : NO_FACTS;
}
