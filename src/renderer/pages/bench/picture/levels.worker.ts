import { type LevelSize, levelSizesOf, TILE_PX, tileFramesOf } from '../../../bench/levels.ts';
import type { Size } from '../../../bench/view.ts';
import type { LevelNews, LevelsWanted, PictureLevel, Tile } from './levelMessages.ts';
import { decodeShrunk } from './shrunkDecoding.ts';

/**
 * Decodes a photo and halves it again and again, away from the thread that draws. A level that shows the whole picture comes
 * first and quickly; the large ones are cut into tiles only after all of the small ones have been sent.
 */
addEventListener('message', (event: MessageEvent<LevelsWanted>) => {
  makeLevels(event.data).catch((error: unknown) => {
    tell({ kind: 'not-decoded', reason: error instanceof Error ? error.message : String(error) });
  });
});

async function makeLevels({ bytes, picture }: LevelsWanted): Promise<void> {
  const [small, large] = bySize(levelSizesOf(picture));
  const first = small[0] !== undefined && small[0].scale < 1 ? small[0] : null;
  const shrunk = first === null ? null : await decodeShrunk(bytes, picture, first.scale);
  if (first !== null && shrunk !== null) sendWhole(first, shrunk);
  const decoded = await createImageBitmap(bytes);
  if (decoded.width !== picture.width || decoded.height !== picture.height) {
    const found = { width: decoded.width, height: decoded.height };
    decoded.close();
    tell({ kind: 'wrong-size', found });
    return;
  }
  if (first !== null && shrunk === null) sendWhole(first, await shrinkQuickly(decoded, first));
  const sources = new Map<LevelSize, ImageBitmap>();
  let finer = decoded;
  for (const level of [...large, ...small]) {
    finer = level.scale === 1 ? decoded : halved(finer, level);
    sources.set(level, finer);
  }
  for (const level of small) {
    const bitmap = sources.get(level);
    if (bitmap !== undefined) sendWhole(level, bitmap);
  }
  for (const level of large.toReversed()) {
    const source = sources.get(level);
    if (source === undefined) continue;
    send({ scale: level.scale, tiles: await cut(source, level) });
    source.close();
  }
  tell({ kind: 'done' });
}

/** Levels that fit one tile, and those that must be cut; each finest first. */
function bySize(levels: readonly LevelSize[]): [small: LevelSize[], large: LevelSize[]] {
  const isSmall = ({ width, height }: LevelSize) => Math.max(width, height) <= TILE_PX;
  return [levels.filter(isSmall), levels.filter((level) => !isSmall(level))];
}

/** Sharp at once though a little rough: takes few of the pixels. The level made from all of them follows and replaces it. */
function shrinkQuickly(decoded: ImageBitmap, { width, height }: Size): Promise<ImageBitmap> {
  return createImageBitmap(decoded, { resizeWidth: width, resizeHeight: height, resizeQuality: 'low' });
}

/** Bilinear drawing at half size is the mean of two by two pixels. Kept off the graphics card, whose textures are limited. */
function halved(finer: ImageBitmap, level: LevelSize): ImageBitmap {
  const canvas = new OffscreenCanvas(level.width, level.height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('Expected a 2d context for a smaller copy of the picture but got none.');
  context.imageSmoothingQuality = 'low';
  context.drawImage(finer, 0, 0, level.width, level.height);
  return canvas.transferToImageBitmap();
}

async function cut(source: ImageBitmap, level: LevelSize): Promise<Tile[]> {
  const tiles: Tile[] = [];
  for (const { x, y, width, height } of tileFramesOf(level)) {
    tiles.push({ x, y, bitmap: await createImageBitmap(source, x, y, width, height) });
  }
  return tiles;
}

function sendWhole({ scale }: LevelSize, bitmap: ImageBitmap): void {
  send({ scale, tiles: [{ x: 0, y: 0, bitmap }] });
}

function send(level: PictureLevel): void {
  postMessage({ kind: 'level', level } satisfies LevelNews, { transfer: level.tiles.map((tile) => tile.bitmap) });
}

function tell(news: LevelNews): void {
  postMessage(news);
}
