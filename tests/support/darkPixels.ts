import sharp, { type Region } from 'sharp';

/** How much of a region is darker than half, on white paper. */
export async function darkShareIn(picture: Buffer, region: Region): Promise<number> {
  const pixels = await sharp(picture).flatten({ background: 'white' }).extract(region).greyscale().raw().toBuffer();
  return pixels.filter((value) => value < 128).length / pixels.length;
}
