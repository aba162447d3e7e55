import { readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import type { PixelPlace } from './photoTruth.ts';

const root = resolve(import.meta.dirname, '../..');

export const heicFile = resolve(root, 'tests/fixtures/images/turned-by-container.heic');

export function samplePhoto(name: string): string {
  return resolve(root, `resources/sample/photos/${name}.jpg`);
}

/** A small picture of its own in each of the other kinds that are kept. Answers the paths. */
export async function writeEachKind(folder: string): Promise<string[]> {
  const kinds = ['png', 'webp', 'tiff'] as const;
  return await Promise.all(
    kinds.map(async (kind, index) => {
      const file = join(folder, `skin.${kind}`);
      await sharp({ create: { width: 320 + index, height: 240, channels: 3, background: '#8a6f4e' } })
        .toFormat(kind)
        .toFile(file);
      return file;
    }),
  );
}

/** The same photo as a front camera may save it: left and right exchanged, with all the camera said of it. */
export async function writeMirrored(folder: string, photo: string): Promise<string> {
  const file = join(folder, 'mirrored.jpg');
  await sharp(photo).flop().keepMetadata().jpeg({ quality: 92 }).toFile(file);
  return file;
}

/**
 * Where a lens that draws towards the middle puts a place: in the corner by a twenty-fifth of its distance, and with the cube of
 * the distance elsewhere (Brown 1971, Photogrammetric Engineering 37:855).
 */
export function seenThroughLens({ x, y }: PixelPlace, { width, height }: { width: number; height: number }): PixelPlace {
  const [right, down] = [x - width / 2, y - height / 2];
  const factor = 1 - (LENS_SHARE * 4 * (right * right + down * down)) / (width * width + height * height);
  return { x: width / 2 + factor * right, y: height / 2 + factor * down };
}

const LENS_SHARE = 0.04;

/** The same photo as a camera with such a lens takes it, with its 35 mm equivalent focal length of 26 mm. Answers the path. */
export async function writeThroughLens(folder: string, photo: string): Promise<string> {
  const { data, info } = await sharp(photo).rotate().removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  const bent = Buffer.alloc(data.length);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const at = straightened({ x: column + 0.5, y: row + 0.5 }, info);
      const x = Math.min(Math.max(at.x - 0.5, 0), width - 1.001);
      const y = Math.min(Math.max(at.y - 0.5, 0), height - 1.001);
      const [left, top] = [Math.floor(x), Math.floor(y)];
      for (let channel = 0; channel < channels; channel++) {
        const value = (down: number, right: number) => data[((top + down) * width + left + right) * channels + channel] ?? 0;
        const upper = value(0, 0) * (1 - x + left) + value(0, 1) * (x - left);
        const lower = value(1, 0) * (1 - x + left) + value(1, 1) * (x - left);
        bent[(row * width + column) * channels + channel] = Math.round(upper * (1 - y + top) + lower * (y - top));
      }
    }
  }
  const file = join(folder, 'bent.jpg');
  await sharp(bent, { raw: { width, height, channels } })
    .jpeg({ quality: 94 })
    .withExif({ IFD2: { FocalLengthIn35mmFilm: '26' } })
    .toFile(file);
  return file;
}

/** The inverse of `seenThroughLens`, by repetition: each round leaves an eighth of the error at most. */
function straightened(seen: PixelPlace, size: { width: number; height: number }): PixelPlace {
  let at = seen;
  for (let round = 0; round < 8; round++) {
    const back = seenThroughLens(at, size);
    at = { x: at.x + seen.x - back.x, y: at.y + seen.y - back.y };
  }
  return at;
}

/**
 * The upright photo, of which a camera that sees less at both sides would show only the middle `width` pixels, with its 35 mm
 * equivalent focal length (by the diagonal, CIPA DC-X 008). Answers the path.
 */
export async function writeNarrowed(folder: string, photo: string, width: number, focalLength35Mm: number): Promise<string> {
  const file = join(folder, 'narrowed.jpg');
  const upright = await sharp(photo).rotate().toBuffer({ resolveWithObject: true });
  await sharp(upright.data)
    .extract({ left: (upright.info.width - width) / 2, top: 0, width, height: upright.info.height })
    .jpeg({ quality: 94 })
    .withExif({ IFD2: { FocalLengthIn35mmFilm: `${focalLength35Mm}` } })
    .toFile(file);
  return file;
}

/** The upright picture with a note of the camera (EXIF orientation, CIPA DC-008) that is wrong: it is shown turned or exchanged. */
export async function writeWronglyNoted(folder: string, photo: string, orientation: number): Promise<string> {
  const file = join(folder, `noted-${orientation}.jpg`);
  await sharp(photo).rotate().withMetadata({ orientation }).jpeg({ quality: 92 }).toFile(file);
  return file;
}

/** What a card reader and a careless hand leave behind: an empty file, a text called a photo, and half a photo. */
export async function writeSpoiltFiles(folder: string): Promise<{ empty: string; text: string; truncated: string }> {
  const files = { empty: join(folder, 'empty.jpg'), text: join(folder, 'shopping.jpg'), truncated: join(folder, 'half.jpg') };
  await writeFile(files.empty, '');
  await writeFile(files.text, 'crickets, vermiculite, cork bark\n'.repeat(40));
  const whole = await readFile(samplePhoto('juniper-07-dorsal'));
  await writeFile(files.truncated, whole.subarray(0, whole.length / 2));
  return files;
}

/**
 * Pictures of 24 megapixels, so that importing them takes a while on any machine. They differ in nothing but a comment (a
 * COM segment, ISO/IEC 10918-1 B.2.4.5), so that none is a duplicate.
 */
export async function writeSeries(folder: string, count: number): Promise<string[]> {
  const photo = await sharp({ create: { width: 6000, height: 4000, channels: 3, background: '#8a6f4e' } })
    .jpeg()
    .toBuffer();
  const startOfImage = photo.subarray(0, 2);
  return await Promise.all(
    Array.from({ length: count }, async (_, index) => {
      const comment = Buffer.from(`photo ${String(index).padStart(4, '0')}`);
      const segment = Buffer.concat([Buffer.from([0xff, 0xfe, 0, comment.length + 2]), comment]);
      const file = join(folder, `series-${String(index).padStart(3, '0')}.jpg`);
      await writeFile(file, Buffer.concat([startOfImage, segment, photo.subarray(2)]));
      return file;
    }),
  );
}

/** How many pixels a millimeter has in the picture of a sheet, and where its sheet and its carapace lie. */
export const SHEET_PICTURE = {
  pxPerMm: 8,
  size: { width: 1600, height: 1200 },
  sheet: { x: 200, y: 150, widthMm: 148, heightMm: 105 },
  carapace: { x: 700, topY: 400, lengthMm: 20 },
} as const;

/** An A6 sheet seen from straight above with a dark oval of known length on it; says nothing about the camera. */
export async function writeSheetPicture(folder: string): Promise<string> {
  const { pxPerMm, size, sheet, carapace } = SHEET_PICTURE;
  const half = (carapace.lengthMm * pxPerMm) / 2;
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${size.width}" height="${size.height}">
    <rect width="100%" height="100%" fill="#6d5a45"/>
    <rect x="${sheet.x}" y="${sheet.y}" width="${sheet.widthMm * pxPerMm}" height="${sheet.heightMm * pxPerMm}" fill="#fdfdfb"/>
    <ellipse cx="${carapace.x}" cy="${carapace.topY + half}" rx="${0.9 * half}" ry="${half}" fill="#3c2a1d"/>
  </svg>`;
  const file = join(folder, 'sheet.jpg');
  await sharp(Buffer.from(drawing)).jpeg({ quality: 90 }).toFile(file);
  return file;
}
