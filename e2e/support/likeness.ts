import sharp, { type Sharp } from 'sharp';
import type { PhotoTruth, PixelPlace } from './photoTruth.ts';

/** Fine enough to tell a skin and a card, coarse enough to forgive half a pixel. */
const CELLS = 48;

/**
 * How far a drawing of the middle of a photo lies from what libvips makes of the file, turned upright by its EXIF and then
 * by `turnDeg`: mean absolute difference of the cells of a coarse grid, 0 to 255.
 */
export async function differenceFrom(drawn: Buffer, photo: PhotoTruth, turnDeg: number): Promise<number> {
  const upright = await sharp(photo.file).autoOrient().toBuffer();
  const turned = await sharp(upright).rotate(turnDeg).toBuffer({ resolveWithObject: true });
  const { width, height } = turned.info;
  const middle = { left: Math.round(width / 4), top: Math.round(height / 4), width: Math.round(width / 2), height: Math.round(height / 2) };
  const expected = await cellsOf(sharp(turned.data).extract(middle));
  const shown = await cellsOf(sharp(drawn));
  return expected.reduce((sum, value, index) => sum + Math.abs(value - (shown[index] ?? 0)), 0) / expected.length;
}

/** Mean gray of a small square of the upright photo and of a drawing, 0 to 255 each. */
export async function graysOf(drawn: Buffer, photo: PhotoTruth, at: PixelPlace, sidePx: number): Promise<{ drawn: number; photo: number }> {
  const upright = await sharp(photo.file).autoOrient().toBuffer();
  const square = { left: Math.round(at.x - sidePx / 2), top: Math.round(at.y - sidePx / 2), width: sidePx, height: sidePx };
  const mean = async (picture: Sharp): Promise<number> =>
    (await sharp(await picture.greyscale().png().toBuffer()).stats()).channels[0]?.mean ?? Number.NaN;
  return { drawn: await mean(sharp(drawn)), photo: await mean(sharp(upright).extract(square)) };
}

async function cellsOf(picture: Sharp): Promise<number[]> {
  return [...(await picture.greyscale().resize(CELLS, CELLS, { fit: 'fill' }).raw().toBuffer())];
}
