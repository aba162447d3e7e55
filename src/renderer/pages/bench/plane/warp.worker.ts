import { warp } from '../../../bench/warp.ts';
import type { WarpNews, WarpWanted } from './warpMessages.ts';

/** Draws the photo as its plane looks from straight above, away from the thread that draws the page. */
addEventListener('message', (event: MessageEvent<WarpWanted>) => {
  draw(event.data).then(
    (bitmap) => postMessage({ kind: 'done', bitmap } satisfies WarpNews, { transfer: [bitmap] }),
    (error: unknown) => tell({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) }),
  );
});

async function draw({ tiles, source, toSource, width, height }: WarpWanted): Promise<ImageBitmap> {
  const canvas = new OffscreenCanvas(source.width, source.height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('Expected a 2d context to read the photo but got none.');
  for (const { x, y, bitmap } of tiles) {
    context.drawImage(bitmap, x, y);
    bitmap.close();
  }
  const { data } = context.getImageData(0, 0, source.width, source.height);
  const pixels = warp({ width: source.width, height: source.height, data }, toSource, width, height);
  return createImageBitmap(new ImageData(pixels, width, height));
}

function tell(news: WarpNews): void {
  postMessage(news);
}
