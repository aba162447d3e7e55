import sharp from 'sharp';

/** A drawing, given as SVG, as a PNG of its own size in few colors. */
export async function pngOfDrawing(svg: string): Promise<Buffer> {
  return await sharp(Buffer.from(svg)).png({ palette: true, colors: 64, compressionLevel: 6, effort: 1 }).toBuffer();
}
