import sharp from 'sharp';

/** A small picture of colored noise; another one for each seed, of the same bytes for the same seed. */
export async function smallPicture(
  seed: number,
  format: 'jpeg' | 'png' | 'webp',
  widthPx = 320,
  heightPx = 240,
): Promise<Uint8Array<ArrayBuffer>> {
  const pixels = Buffer.alloc(widthPx * heightPx * 3);
  let state = (seed + 1) * 2_654_435_761;
  for (let index = 0; index < pixels.length; index++) {
    // Numerical Recipes' linear congruential generator; quality does not matter here.
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    pixels[index] = state >>> 24;
  }
  const picture = sharp(pixels, { raw: { width: widthPx, height: heightPx, channels: 3 } });
  return new Uint8Array(await picture.toFormat(format).toBuffer());
}
