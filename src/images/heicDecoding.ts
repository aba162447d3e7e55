import { readFile } from 'node:fs/promises';
import { parentPort } from 'node:worker_threads';
import libheif from 'libheif-js/wasm-bundle.js';

/** Upright pixels, four bytes each (RGBA), or why there are none. */
export type HeicAnswer =
  | { readonly decoded: true; readonly widthPx: number; readonly heightPx: number; readonly rgba: Uint8ClampedArray<ArrayBuffer> }
  | { readonly decoded: false; readonly reason: string };

/** How long the thread waits for the next picture before it ends and gives the decoder's memory back. */
const PATIENCE_MS = 30_000;

/**
 * Runs in a thread of its own, one picture after another: decoding 12 megapixels blocks for half a second. libheif turns the
 * picture upright itself (ISO/IEC 23008-12, 6.5.10: `irot` and `imir` are binding, the EXIF orientation is not).
 */
async function decode(file: Buffer): Promise<HeicAnswer> {
  const images = new libheif.HeifDecoder().decode(file);
  const image = images.find((candidate) => candidate.is_primary()) ?? images[0];
  if (!image) return { decoded: false, reason: 'no picture in the file' };
  const widthPx = image.get_width();
  const heightPx = image.get_height();
  const target = { data: new Uint8ClampedArray(widthPx * heightPx * 4), width: widthPx, height: heightPx };
  const shown = await new Promise<{ data: Uint8ClampedArray<ArrayBuffer> } | null>((resolve) => image.display(target, resolve));
  return shown ? { decoded: true, widthPx, heightPx, rgba: shown.data } : { decoded: false, reason: 'the picture data is damaged' };
}

/** libheif throws what it finds wrong with a file. */
async function answerFor(path: string): Promise<HeicAnswer> {
  const file = await readFile(path);
  try {
    return await decode(file);
  } catch (error) {
    return { decoded: false, reason: error instanceof Error ? error.message : String(error) };
  }
}

const port = parentPort;
if (port === null) throw new TypeError('Expected to run in a thread of its own');

// The thread ends only after a rest: a thread that ends while its WebAssembly is still being compiled in the background can
// take the whole process with it (seen once in hundreds of runs when each picture had its own thread).
let rest = setTimeout(() => port.close(), PATIENCE_MS);
port.on('message', async (path: string) => {
  clearTimeout(rest);
  const answer = await answerFor(path);
  port.postMessage(answer, answer.decoded ? [answer.rgba.buffer] : []);
  rest = setTimeout(() => port.close(), PATIENCE_MS);
});
