import { appendFile, copyFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import sharp from 'sharp';

const SAMPLE = resolve(import.meta.dirname, '../../resources/sample/photos/juniper-10-dorsal.jpg');

/** A JPEG of the given size with the texture of a real photograph: a sample skin enlarged, with sensor noise on top. */
export async function writeLargePicture(file: string, widthPx: number, heightPx: number): Promise<void> {
  const noise = await sharp({
    create: { width: widthPx, height: heightPx, channels: 3, background: '#808080', noise: { type: 'gaussian', mean: 128, sigma: 14 } },
  })
    .png({ compressionLevel: 0 })
    .toBuffer();
  const bytes = await sharp(SAMPLE, { limitInputPixels: false })
    .resize(widthPx, heightPx, { fit: 'fill' })
    .composite([{ input: noise, blend: 'soft-light' }])
    .jpeg({ quality: 92 })
    .toBuffer();
  await writeFile(file, bytes);
}

/** Copies of one JPEG with distinct content: bytes after the end marker belong to the file, not to the picture. */
export async function writeDistinctCopies(file: string, folder: string, count: number): Promise<string[]> {
  const names = Array.from({ length: count }, (_, index) => join(folder, `photo-${String(index).padStart(3, '0')}.jpg`));
  for (const [index, name] of names.entries()) {
    await copyFile(file, name);
    await appendFile(name, `copy ${index}`);
  }
  return names;
}
