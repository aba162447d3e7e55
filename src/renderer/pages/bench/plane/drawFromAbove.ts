import type { ViewFromAbove } from '../../../../domain/measuring/fromAbove.ts';
import { ontoCopy } from '../../../../domain/measuring/photoMap.ts';
import type { Size } from '../../../bench/view.ts';
import type { PictureLevel } from '../picture/levelMessages.ts';
import type { PictureState } from '../picture/picture.ts';
import { startWarpWorker } from '../picture/startWorker.ts';
import type { WarpNews, WarpWanted } from './warpMessages.ts';

/** A level is read whole in the worker: larger ones would take more memory than the sharpness is worth. */
const MOST_SOURCE_PIXELS = 26_000_000;

/**
 * The photo as its plane looks from straight above, drawn in a worker from the level that is as fine as the view needs.
 *
 * @returns the bitmap, which the caller closes; null while nothing of the photo is decoded.
 */
export async function drawFromAbove(
  view: ViewFromAbove,
  picture: PictureState,
  photo: Size,
  signal: AbortSignal,
): Promise<ImageBitmap | null> {
  const level = levelOf(picture, view, photo);
  if (level === null) return null;
  const { scale } = level;
  const tiles = await Promise.all(level.tiles.map(async ({ x, y, bitmap }) => ({ x, y, bitmap: await createImageBitmap(bitmap) })));
  signal.throwIfAborted();
  const wanted: WarpWanted = {
    tiles,
    source: { width: Math.max(1, Math.round(photo.width * scale)), height: Math.max(1, Math.round(photo.height * scale)) },
    toSource: ontoCopy(view.toPhoto, scale),
    width: view.widthPx,
    height: view.heightPx,
  };
  const worker = startWarpWorker();
  try {
    return await new Promise((resolve, reject) => {
      signal.addEventListener('abort', () => reject(signal.reason), { once: true });
      worker.addEventListener('error', (event) => reject(new Error(event.message)));
      worker.addEventListener('message', ({ data }: MessageEvent<WarpNews>) => {
        if (data.kind === 'done') resolve(data.bitmap);
        else reject(new Error(data.reason));
      });
      worker.postMessage(
        wanted,
        tiles.map(({ bitmap }) => bitmap),
      );
    });
  } finally {
    worker.terminate();
  }
}

/** The coarsest level at least as fine as the view, of those that can be read whole. */
function levelOf({ levels, screen }: PictureState, view: ViewFromAbove, photo: Size): PictureLevel | null {
  const all = screen === null ? levels : [...levels, screen];
  const readable = all
    .filter(({ scale }) => scale * scale * photo.width * photo.height <= MOST_SOURCE_PIXELS)
    .toSorted((one, other) => one.scale - other.scale);
  const neededScale = photoPxPerViewPx(view) === 0 ? 1 : 1 / photoPxPerViewPx(view);
  return readable.find(({ scale }) => scale >= Math.min(1, neededScale)) ?? readable.at(-1) ?? null;
}

/** About how many pixels of the photo stand behind one of the view, at its middle. */
function photoPxPerViewPx({ toPhoto: { toPinhole: m }, widthPx, heightPx }: ViewFromAbove): number {
  const [x, y] = [widthPx / 2, heightPx / 2];
  const factor = m[6] * x + m[7] * y + m[8];
  const [px, py] = [(m[0] * x + m[1] * y + m[2]) / factor, (m[3] * x + m[4] * y + m[5]) / factor];
  const determinant =
    ((m[0] - px * m[6]) / factor) * ((m[4] - py * m[7]) / factor) - ((m[1] - px * m[7]) / factor) * ((m[3] - py * m[6]) / factor);
  return Math.sqrt(Math.abs(determinant));
}
