import type { Size } from '../../../bench/view.ts';

/**
 * The picture at `scale` (1/2, 1/4 or 1/8) made by the decoder itself: a JPEG is kept as blocks of 8 by 8 pixels in frequencies
 * (ITU-T T.81), and a decoder asked for fewer pixels leaves the higher ones alone, which takes half the time of decoding it
 * whole. Upright, and a size rounded up: its last column and row may reach past the picture's edge.
 *
 * Null where that cannot be had: other formats, smaller scales, a decoder that takes the wanted size for no more than a hint.
 * What is wrong with the bytes is for decoding them whole to say.
 */
export async function decodeShrunk(bytes: Blob, picture: Size, scale: number): Promise<ImageBitmap | null> {
  if (bytes.type !== 'image/jpeg' || !decodesShrunk()) return null;
  const wanted = { width: Math.ceil(picture.width * scale), height: Math.ceil(picture.height * scale) };
  const data = await bytes.arrayBuffer();
  const decoder = new ImageDecoder({
    data,
    type: bytes.type,
    desiredWidth: wanted.width,
    desiredHeight: wanted.height,
    transfer: [data],
  });
  try {
    const { image } = await decoder.decode();
    const bitmap = await createImageBitmap(image);
    image.close();
    if (bitmap.width === wanted.width && bitmap.height === wanted.height) return bitmap;
    bitmap.close();
    return null;
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  } finally {
    decoder.close();
  }
}

/** WebCodecs is not in every browser; where its frames know no rotation, a photo taken upright would come out lying on its side. */
function decodesShrunk(): boolean {
  return 'ImageDecoder' in globalThis && 'VideoFrame' in globalThis && 'rotation' in VideoFrame.prototype;
}
