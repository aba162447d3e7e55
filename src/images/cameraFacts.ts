import exifr from 'exifr';
import { CameraTime } from '../domain/dates.ts';
import type { CameraFacts } from '../domain/photo/photo.ts';

/** Facts without those of the orientation, which is the decoder's to say. */
export type WrittenFacts = Omit<CameraFacts, 'orientation'>;

export const NO_FACTS: WrittenFacts = { takenAt: null, camera: null, focalLengthMm: null, focalLength35Mm: null };

/** Tag names as exifr spells them; DateTimeOriginal alone is when the picture was taken (EXIF 2.32, 4.6.5). */
const TAGS = [
  'Make',
  'Model',
  'DateTimeOriginal',
  'OffsetTimeOriginal',
  'FocalLength',
  'FocalLengthIn35mmFormat',
  'ExifImageWidth',
  'ExifImageHeight',
];

const OPTIONS = {
  tiff: true,
  ifd0: { pick: TAGS },
  exif: { pick: TAGS },
  gps: false,
  xmp: false,
  iptc: false,
  icc: false,
  jfif: false,
  reviveValues: false,
  translateValues: false,
  mergeOutput: true,
};

/** Of a picture in px, whichever way it is turned. */
export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * What the camera wrote. Damaged or missing metadata is no reason to refuse a photo: then nothing is known.
 *
 * @param source a file's path, or an EXIF block with or without its `Exif` prefix.
 * @param size of the picture as it is now.
 */
export async function readCameraFacts(source: string | Buffer, size: PictureSize): Promise<WrittenFacts> {
  let tags: unknown;
  try {
    tags = await exifr.parse(typeof source === 'string' ? source : withoutPrefix(source), OPTIONS);
  } catch {
    // exifr throws errors of many kinds on damaged blocks; none of them is about us.
    return NO_FACTS;
  }
  return isRecord(tags) ? factsFrom(tags, size) : NO_FACTS;
}

function withoutPrefix(block: Buffer): Buffer {
  return block.subarray(0, 6).toString('latin1') === 'Exif\0\0' ? block.subarray(6) : block;
}

/** The equivalent focal length is that of the picture as it was taken: one that was cut or resized since has another, or may have. */
export function factsFrom(tags: Readonly<Record<string, unknown>>, size: PictureSize): WrittenFacts {
  return {
    takenAt: cameraTime(tags['DateTimeOriginal'], tags['OffsetTimeOriginal']),
    camera: cameraName(tags['Make'], tags['Model']),
    focalLengthMm: positive(tags['FocalLength']),
    focalLength35Mm: isAsTaken(tags, size) ? positive(tags['FocalLengthIn35mmFormat']) : null,
  };
}

/** A frame cut by less changes the focal length by no more than it is uncertain. Own judgment. */
const SAME_SIZE = 0.02;

/** Whether the picture still has the size that the camera wrote (PixelXDimension, PixelYDimension; EXIF 2.32, 4.6.5); true where it wrote none. */
function isAsTaken(tags: Readonly<Record<string, unknown>>, { widthPx, heightPx }: PictureSize): boolean {
  const written = [positive(tags['ExifImageWidth']), positive(tags['ExifImageHeight'])].toSorted((one, other) => (one ?? 0) - (other ?? 0));
  const now = [widthPx, heightPx].toSorted((one, other) => one - other);
  return written.every((px, index) => px === null || Math.abs((now[index] ?? 0) / px - 1) <= SAME_SIZE);
}

/** EXIF writes `2026:11:25 12:00:00`; blanks or zeros mean unknown. */
function cameraTime(time: unknown, offset: unknown): CameraTime | null {
  const parts = typeof time === 'string' ? /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}:\d{2})/.exec(time) : null;
  if (!parts) return null;
  const [, year, month, day, clock] = parts;
  const taken = CameraTime.safeParse({ local: `${year}-${month}-${day}T${clock}`, offset: cameraOffset(offset) });
  return taken.success ? taken.data : null;
}

function cameraOffset(offset: unknown): string | null {
  if (typeof offset !== 'string') return null;
  const written = tidyText(offset);
  if (written === 'Z') return '+00:00';
  return written !== null && /^[+-]\d{2}:\d{2}$/.test(written) ? written : null;
}

/** Makers often repeat their name in the model. */
function cameraName(make: unknown, model: unknown): string | null {
  const maker = tidyText(make);
  const type = tidyText(model);
  if (maker === null || type === null) return maker ?? type;
  return type.toLowerCase().startsWith(maker.toLowerCase()) ? type : `${maker} ${type}`;
}

/** EXIF text is padded with blanks and NULs. */
function tidyText(value: unknown): string | null {
  if (typeof value !== 'string') return null;
  const tidy = value.replaceAll('\0', '').trim().slice(0, 200);
  return tidy === '' ? null : tidy;
}

function positive(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : null;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
