import { type LevelSize, levelSizesOf, TILE_PX, tileFramesOf } from '../../../bench/levels.ts';
import type { LevelNews, LevelsWanted, PictureLevel, Tile } from './levelMessages.ts';

/**
 * Decodes a photo and halves it again and again, away from the thread that draws. The large levels are cut into tiles only
 * after the small ones, which show the whole picture, have been sent.
 */
addEventListener('message', (event: MessageEvent<LevelsWanted>) => {
  makeLevels(event.data).catch((error: unknown) => {
    tell({ kind: 'not-decoded', reason: error instanceof Error ? error.message : String(error) });
  });
});

async function makeLevels({ bytes, picture }: LevelsWanted): Promise<void> {
  const decoded = await createImageBitmap(bytes);
  if (decoded.width !== picture.width || decoded.height !== picture.height) {
    const found = { width: decoded.width, height: decoded.height };
    decoded.close();
    tell({ kind: 'wrong-size', found });
    return;
  }
  const [small, large] = bySize(levelSizesOf(picture));
  const [first] = small;
  if (first !== undefined && first.scale < 1) await sendQuickly(decoded, first);
  const sources = new Map<LevelSize, ImageBitmap>();
  let finer = decoded;
  for (const level of [...large, ...small]) {
    finer = level.scale === 1 ? decoded : halved(finer, level);
    sources.set(level, finer);
  }
  for (const level of small) {
    const bitmap = sources.get(level);
    if (bitmap !== undefined) send({ scale: level.scale, tiles: [{ x: 0, y: 0, bitmap }] });
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
async function sendQuickly(decoded: ImageBitmap, { width, height, scale }: LevelSize): Promise<void> {
  const bitmap = await createImageBitmap(decoded, { resizeWidth: width, resizeHeight: height, resizeQuality: 'low' });
  send({ scale, tiles: [{ x: 0, y: 0, bitmap }] });
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

function send(level: PictureLevel): void {
  postMessage({ kind: 'level', level } satisfies LevelNews, { transfer: level.tiles.map((tile) => tile.bitmap) });
}

function tell(news: LevelNews): void {
  postMessage(news);
}
